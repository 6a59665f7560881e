/** The ray-caster that photographs them. */
package org.epochrome.demo.scene;
