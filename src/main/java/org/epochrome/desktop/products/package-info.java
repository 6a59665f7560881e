/** What is saved: several products at once. */
package org.epochrome.desktop.products;
