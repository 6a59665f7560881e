package org.epochrome.desktop.state;

import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.epochrome.desktop.style.Texts;

/** Exchanges options of the command line in messages of the engine for what the window has instead. */
final class OptionWording {
    private static final Map<String, String> CONTROLS = Map.ofEntries(
            Map.entry("assign", Texts.of("message.option.assign")),
            Map.entry("body", Texts.of("message.option.body")),
            Map.entry("detail", Texts.of("message.option.detail")),
            Map.entry("encoding", Texts.of("message.option.encoding")),
            Map.entry("encoding-frame", Texts.of("message.option.encodingFrame")),
            Map.entry("mirrored", Texts.of("message.option.mirrored")),
            Map.entry("mount", Texts.of("message.option.mount")),
            Map.entry("north", Texts.of("message.option.north")),
            Map.entry("passband", Texts.of("message.option.passband")),
            Map.entry("red", Texts.of("message.option.band")),
            Map.entry("scale", Texts.of("message.option.scale")),
            Map.entry("site", Texts.of("message.option.site")));

    private static final Map<String, String> VALUES = Map.of(
            "yes", Texts.of("panel.session.mirrored.yes"),
            "no", Texts.of("panel.session.mirrored.no"),
            "altaz", Texts.of("panel.session.mount.altaz"),
            "equatorial", Texts.of("panel.session.mount.equatorial"));

    private static final String BANDS = "--red(?:, --\\w+)*,? or (?:in )?(?:a )?--(?:sheet|blue)";
    private static final String VALUE = "(yes|no|altaz|equatorial|linear|srgb|gamma=[0-9.]*[0-9]|-?[0-9.]*[0-9])\\b";
    private static final String GIVE = "\\b(?:give|say) ([^,;.]*?) (?:with|by) ";

    /** From whole phrases to single options; each works on what those before it left. */
    private static final List<Rule> RULES = List.of(
            phrase(" or add --overwrite", ""),
            phrase("put it back, or leave it out (?:with --leave-out|\\(--leave-out\\))", Texts.of("message.absent")),
            phrase("(?:one that --save-session wrote|a file written by --save-session)", Texts.of("message.session")),
            phrase(
                    "give it (?:with|by) --colour, or (?:give|say) its band in a --sheet",
                    Texts.of("message.bandOfColour")),
            phrase("add --passband \\S+=FROM-TO in nm", Texts.of("message.knownBand")),
            phrase("(?:use --clock to say which|say which by --clock)", Texts.of("message.enterTimes")),
            phrase("give the length with --exposure", Texts.of("message.enterTimes")),
            phrase("--exposure tells the length", Texts.of("message.enterTimes")),
            phrase(" \\+ --exposure", Texts.of("message.lengthSource")),
            phrase("\\b(?:give|say) (its times|the times|them in UTC) in a --sheet", Texts.of("message.enterOnFrame")),
            phrase("(?:with|on|by) --detail", Texts.of("message.option.detail")),
            phrase("Without --site", Texts.of("message.noSite")),
            phrase("--assign or --luminance-from", "--assign"),
            phrase(BANDS, "--red"),
            phrase("in a --sheet", Texts.of("message.onFrame")),
            phrase("(--[a-z-]+) (?:DEG|LAT,LON)", "%1$s"),
            phrase("(--passband) [^ ]+=FROM-TO", "%1$s"),
            phrase("or --encoding " + VALUE, Texts.of("message.orTo")),
            phrase("--encoding-frame FILE=" + VALUE, Texts.of("message.to", "--encoding-frame", "%1$s")),
            new Rule(
                    Pattern.compile("\\b([Uu]se|[Ss]ay|[Gg]ive) (--[a-z-]+) " + VALUE),
                    m -> likeBegun(
                            Texts.of("message.set", m.group(2), VALUES.getOrDefault(m.group(3), m.group(3))),
                            m.group(1))),
            phrase(GIVE + "(--[a-z-]+)", Texts.of("message.enter")),
            phrase("(?:with|by) (--[a-z-]+)", Texts.of("message.under")),
            new Rule(Pattern.compile("--([a-z]+(?:-[a-z]+)*)"), m -> CONTROLS.getOrDefault(m.group(1), m.group())));

    /** What is looked for, and what comes in its place. */
    private record Rule(Pattern pattern, Function<MatchResult, String> wording) {}

    private OptionWording() {}

    /** @param wording with the groups of the phrase as %1$s and so on */
    private static Rule phrase(String phrase, String wording) {
        return new Rule(Pattern.compile(phrase), m -> String.format(wording, groups(m)));
    }

    private static Object[] groups(MatchResult m) {
        Object[] groups = new Object[m.groupCount()];
        for (int i = 0; i < groups.length; i++) {
            groups[i] = m.group(i + 1);
        }
        return groups;
    }

    /** With a capital where the words had one that it stands for. */
    private static String likeBegun(String wording, String replaced) {
        return Character.isUpperCase(replaced.charAt(0))
                ? Character.toUpperCase(wording.charAt(0)) + wording.substring(1)
                : wording;
    }

    static String replaced(String message) {
        String text = message;
        for (Rule rule : RULES) {
            text = rule.pattern.matcher(text).replaceAll(m -> Matcher.quoteReplacement(rule.wording.apply(m)));
        }
        return text;
    }
}
