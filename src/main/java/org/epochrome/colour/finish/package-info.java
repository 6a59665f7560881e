/** From the linear picture to the finished one: detail, tone, framing. */
package org.epochrome.colour.finish;
