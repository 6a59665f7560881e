/** The workbench window: JavaFX over the bench. */
package org.epochrome.desktop;
