/** What is probably wrong with a session, and what can be trusted. */
package org.epochrome.session.diagnose;
