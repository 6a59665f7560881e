package org.epochrome.session.verdict;

/** How sure an explanation is. */
public enum Confidence {
    /** It explains everything, and nothing else explains as much. */
    SURE,
    /** It explains more than all other explanations that were tried. */
    LIKELY,
    /** Something is wrong, and other explanations are about as good. */
    POSSIBLE
}
