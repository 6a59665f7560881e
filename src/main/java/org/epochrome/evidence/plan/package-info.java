/** The plan of a night as files: a page, tables, a calendar. */
package org.epochrome.evidence.plan;
