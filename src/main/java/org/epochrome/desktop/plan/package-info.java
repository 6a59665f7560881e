/** The page that plans a night. */
package org.epochrome.desktop.plan;
