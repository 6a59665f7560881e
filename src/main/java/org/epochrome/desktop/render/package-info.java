/** Pictures for the screen, made in the background. */
package org.epochrome.desktop.render;
