package org.epochrome.disk.start;

import org.epochrome.text.Message;
import org.epochrome.text.Refusal;

/** No disk could be fitted; the message says why and what to do, without naming the file. */
public final class DiskNotFound extends Refusal {
    private static final long serialVersionUID = 1L;

    public DiskNotFound(Message reason) {
        super(reason, null);
    }
}
