/** Records of choices: the one place where a choice of the user is declared. */
package org.epochrome.choice;
