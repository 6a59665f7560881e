/** Carrying the detail of a frame along the body's rotation to the epoch. */
package org.epochrome.turn;
