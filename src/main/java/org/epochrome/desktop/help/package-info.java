/** Documents, licences and versions, inside the window. */
package org.epochrome.desktop.help;
