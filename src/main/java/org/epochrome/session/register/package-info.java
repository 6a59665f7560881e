/** Where frames lie against each other, by all witnesses together. */
package org.epochrome.session.register;
