/** What limits a recording: rotation, resolution, dispersion, sampling; and the sequence of recordings that follows from them. */
package org.epochrome.plan.limit;
