/** A night's plan: the sky, the limits of recordings and the advice that follows from both. */
package org.epochrome.plan;
