/** When each exposure was taken, how the planet stood then, how it turns and what the air does; the frames between the stages. */
package org.epochrome.session.schedule;
