/** The disk fit: steps from a start to the disk that leaves least. */
package org.epochrome.disk.fit;
