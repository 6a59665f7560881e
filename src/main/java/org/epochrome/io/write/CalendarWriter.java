package org.epochrome.io.write;

import biweekly.Biweekly;
import biweekly.ICalendar;
import biweekly.component.VEvent;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Date;
import java.util.List;
import java.util.UUID;

/** Calendars as iCalendar text (RFC 5545). The same entries give the same text. */
public final class CalendarWriter {
    private CalendarWriter() {}

    /**
     * A calendar.
     *
     * @param stamp when its entries were made, as far as a calendar is concerned
     */
    public static String text(List<CalendarEntry> entries, Instant stamp, String tool) {
        ICalendar calendar = new ICalendar();
        calendar.setProductId("-//" + tool + "//EN");
        for (CalendarEntry entry : entries) {
            VEvent event = new VEvent();
            event.setUid(UUID.nameUUIDFromBytes((tool + entry.start() + entry.title()).getBytes(StandardCharsets.UTF_8))
                    .toString());
            event.setDateTimeStamp(Date.from(stamp));
            event.setDateStart(Date.from(entry.start()));
            if (entry.end().isAfter(entry.start())) {
                event.setDateEnd(Date.from(entry.end()));
            }
            event.setSummary(entry.title());
            if (!entry.description().isEmpty()) {
                event.setDescription(entry.description());
            }
            calendar.addEvent(event);
        }
        return Biweekly.write(calendar).go();
    }
}
