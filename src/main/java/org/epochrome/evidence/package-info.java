/** The evidence report: why a result can be trusted, on pages to print. */
package org.epochrome.evidence;
