/** The window's content: what stands where, and what keys and the mouse do. */
package org.epochrome.desktop.view;
