/** Long work: progress in nested parts, polled cancel, rows shared among threads. Knows no window. */
package org.epochrome.job;
