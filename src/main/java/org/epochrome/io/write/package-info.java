/** Pictures, cubes and animations, written. */
package org.epochrome.io.write;
