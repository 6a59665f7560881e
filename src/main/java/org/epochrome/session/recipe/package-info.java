/** All that a user chooses, and the frames it is chosen for: values without pixels. */
package org.epochrome.session.recipe;
