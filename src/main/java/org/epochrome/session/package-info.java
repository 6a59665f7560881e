/** The recipe of a combination, the pipeline that runs it, and the evidence it leaves. */
package org.epochrome.session;
