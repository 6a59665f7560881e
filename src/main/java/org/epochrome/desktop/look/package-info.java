/** Pages of the side about how finished pictures look. */
package org.epochrome.desktop.look;
