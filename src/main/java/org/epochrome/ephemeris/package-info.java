/** Where the planets stand, how they turn, and the aspect they show to an observer. */
package org.epochrome.ephemeris;
