/** What the workbench looks like: the planet, the time ribbon, the side, the tools. */
package org.epochrome.desktop.view;
