package org.epochrome.desktop.recovery;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Optional;
import org.epochrome.desktop.style.Texts;
import org.epochrome.session.product.Session;

/**
 * What is known of a session that was left without being saved.
 *
 * @param id its name in the {@link RecoveryFolder}
 * @param planet name for people
 * @param date UTC date of its earliest recording, or of its last change if no recording is there; ISO 8601
 * @param frames number of frames, also of those that are gone
 */
public record UnsavedSession(String id, String planet, String date, int frames) {
    static UnsavedSession of(String id, Session session) {
        var all = session.recipe().frames().all();
        Optional<Instant> begin =
                all.stream().map(f -> f.timing().span().start()).min(Instant::compareTo);
        return new UnsavedSession(
                id,
                session.recipe().body().displayName(),
                date(begin.orElseGet(Instant::now)),
                all.size() + session.recipe().frames().absent().size());
    }

    /** A session that nothing is known of but when it was written down. */
    static UnsavedSession unknown(String id, Instant written) {
        return new UnsavedSession(id, Texts.of("start.unsaved.unknown"), date(written), 0);
    }

    private static String date(Instant at) {
        return LocalDate.ofInstant(at, ZoneOffset.UTC).toString();
    }

    /** Planet, date and number of frames, as far as they are known. */
    public String title() {
        return frames == 0
                ? Texts.of("start.unsaved", planet, date)
                : frames == 1
                        ? Texts.of("start.unsaved.frame", planet, date)
                        : Texts.of("start.unsaved.frames", planet, date, frames);
    }
}
