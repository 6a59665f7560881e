/** Options that commands share, and how they become a session. */
package org.epochrome.command.option;
