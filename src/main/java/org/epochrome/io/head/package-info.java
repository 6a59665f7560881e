/** The information in the header of an image file. */
package org.epochrome.io.head;
