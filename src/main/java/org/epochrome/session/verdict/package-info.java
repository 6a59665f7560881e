/** What a result is worth, what is probably wrong, and what mends it: values. */
package org.epochrome.session.verdict;
