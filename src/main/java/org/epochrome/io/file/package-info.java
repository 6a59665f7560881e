/** What all files share: safe names, atomic writing, tables of text, and the errors that name a file. */
package org.epochrome.io.file;
