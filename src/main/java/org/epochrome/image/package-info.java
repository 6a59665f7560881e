/** Linear float planes, the bands they were taken in, and what can be done to them as pictures. */
package org.epochrome.image;
