/** What is made of a combination: the finished picture, maps, animations. */
package org.epochrome.session.product;
