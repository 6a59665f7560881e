/** Reports for programs, and writing all files of a session. */
package org.epochrome.session.report;
