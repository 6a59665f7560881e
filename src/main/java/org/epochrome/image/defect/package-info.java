/** What the camera or the stacking has spoilt in a frame. */
package org.epochrome.image.defect;
