/** JMH benchmarks, on the demo scenes. */
package org.epochrome.bench;
