/** From registered frames to one linear colour picture. */
package org.epochrome.session.combine;
