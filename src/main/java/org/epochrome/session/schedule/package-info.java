/** When each exposure was taken, how the planet stood then, how it turns and what the air does; planes in memory. */
package org.epochrome.session.schedule;
