/** The globe without its shading: as a map, and as it looks at other instants. */
package org.epochrome.map;
