/** Colours, fonts, number formats and the icon. */
package org.epochrome.desktop.style;
