/** The fit of one moon or shadow, and the search for those that no theory expects. */
package org.epochrome.moon.fit;
