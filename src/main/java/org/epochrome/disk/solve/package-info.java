/** Normal equations of the disk fit, and weights and smooth functions for them. */
package org.epochrome.disk.solve;
