/** Invented surfaces of planets. */
package org.epochrome.demo.world;
