/** Linear float planes and the bands they were taken in. */
package org.epochrome.image;
