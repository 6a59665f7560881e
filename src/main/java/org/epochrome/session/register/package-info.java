/** The positions of frames relative to each other, from limb, detail and predicted dispersion together. */
package org.epochrome.session.register;
