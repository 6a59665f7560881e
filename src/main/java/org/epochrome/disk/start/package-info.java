/** Where the disk fit begins: moments, edges, levels. */
package org.epochrome.disk.start;
