/** What is asked once and kept: site, clock, telescope and camera. */
package org.epochrome.desktop.setup;
