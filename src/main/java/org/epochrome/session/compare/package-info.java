/** How the detail of frames compares. */
package org.epochrome.session.compare;
