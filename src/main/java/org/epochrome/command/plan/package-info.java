/** Options of the command plan, and what it prints. */
package org.epochrome.command.plan;
