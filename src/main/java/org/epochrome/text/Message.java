package org.epochrome.text;

import java.util.List;
import java.util.Locale;
import java.util.ResourceBundle;
import java.util.stream.Stream;

/**
 * A sentence of the engine or of the command line, or part of one. Its words are in the resource bundle {@code
 * messages.properties} or {@code command.properties}: a translation is one more file of each.
 *
 * @param key of its words; those for the window, if they are others, have the key with {@code .window} at its end
 * @param values what the {@code %} conversions stand for: numbers, texts, and messages as parts of this one
 */
public record Message(String key, List<Object> values) {
    private static final ResourceBundle ENGINE = ResourceBundle.getBundle("org.epochrome.text.messages");
    private static final ResourceBundle COMMAND = ResourceBundle.getBundle("org.epochrome.text.command");

    public Message {
        values = List.copyOf(values);
    }

    /**
     * A message.
     *
     * @param values numbers and messages stay what they are, of anything else its text is kept
     */
    public static Message of(String key, Object... values) {
        return new Message(
                key,
                Stream.of(values)
                        .map(v -> v instanceof Number || v instanceof Message ? v : String.valueOf(v))
                        .toList());
    }

    /**
     * A text that reads the same on the command line and in the window.
     *
     * @throws java.util.MissingResourceException if the bundle has no such key
     */
    public static String text(String key, Object... values) {
        return of(key, values).toString();
    }

    /**
     * The words of this message. Numbers look the same in every language; without values the words are returned as they
     * are, so that a lone per cent sign needs no other.
     *
     * @throws java.util.MissingResourceException if the bundle has no such key
     */
    public String in(Wording wording) {
        String words = wording.endings().stream()
                .map(ending -> key + ending)
                .filter(ENGINE::containsKey)
                .findFirst()
                .map(ENGINE::getString)
                .orElseGet(() -> COMMAND.getString(key));
        return values.isEmpty()
                ? words
                : String.format(
                        Locale.ROOT,
                        words,
                        values.stream()
                                .map(v -> v instanceof Message part ? part.in(wording) : v)
                                .toArray());
    }

    /** Messages in the words of the command line. */
    public static List<String> texts(List<Message> messages) {
        return messages.stream().map(Message::toString).toList();
    }

    /** The words on the command line and in files. */
    @Override
    public String toString() {
        return in(Wording.COMMAND_LINE);
    }
}
