/** What Help shows beside the keys. */
package org.epochrome.desktop.help;
