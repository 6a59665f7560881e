/** UTC and TT, leap seconds, and the span of a recording. */
package org.epochrome.time;
