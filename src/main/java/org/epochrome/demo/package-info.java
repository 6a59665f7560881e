/**
 * Invented planets, photographed by ray casting: the demo sessions, and scenes of exactly known truth for tests. Shares
 * no geometry with {@code disk} and {@code turn}, so that agreement between them means something.
 */
package org.epochrome.demo;
