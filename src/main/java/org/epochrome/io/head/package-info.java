/** What the head of an image file says. */
package org.epochrome.io.head;
