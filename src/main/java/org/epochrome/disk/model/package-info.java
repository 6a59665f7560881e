/** The forward model of a disk: sky, limb law, markings and blur, with derivatives. */
package org.epochrome.disk.model;
