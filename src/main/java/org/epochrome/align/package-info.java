/** Shifts between frames: what the limb, the detail and physics say, and their fusion. */
package org.epochrome.align;
