/** The astronomy of a night at a site: when the planet, the Sun and the Moon stand where, and what can be seen. */
package org.epochrome.plan.night;
