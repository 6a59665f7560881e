/** What drawings of a plan show, as numbers: for a page or a window. */
package org.epochrome.plan.drawing;
