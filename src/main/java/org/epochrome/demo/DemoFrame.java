package org.epochrome.demo;

import org.epochrome.demo.scene.Rendered;
import org.epochrome.demo.scene.Shot;

/**
 * A file of a demo session.
 *
 * @param file name; its ending is its format
 * @param shot how it was recorded
 * @param picture what it shows, and the truth about it
 */
public record DemoFrame(String file, Shot shot, Rendered picture) {}
