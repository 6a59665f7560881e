/** What the air does to the light: refractivity, refraction, dispersion. */
package org.epochrome.atmosphere;
