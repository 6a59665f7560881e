package org.epochrome.command;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.epochrome.text.Message;
import picocli.CommandLine;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.MissingParameterException;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.OverwrittenOptionException;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.TypeConversionException;
import picocli.CommandLine.UnmatchedArgumentException;

/** What is wrong with a command line, in the program's texts instead of picocli's. */
final class UsageText {
    private UsageText() {}

    /** Has numbers refused in the program's words. */
    static void register(CommandLine line) {
        number(line, int.class, Integer.class, Integer::valueOf, t -> Message.text("typed.wholeNumber", t));
        number(line, double.class, Double.class, Double::valueOf, t -> Message.text("typed.number", t));
    }

    private static <T> void number(
            CommandLine line,
            Class<T> primitive,
            Class<T> boxed,
            ITypeConverter<T> parsed,
            UnaryOperator<String> refusal) {
        ITypeConverter<T> converter = text -> {
            try {
                return parsed.convert(text);
            } catch (NumberFormatException e) {
                throw new TypeConversionException(refusal.apply(text));
            }
        };
        line.registerConverter(primitive, converter);
        line.registerConverter(boxed, converter);
    }

    /** A sentence. */
    static String of(ParameterException e) {
        if (e instanceof UnmatchedArgumentException unmatched) {
            return unmatched(unmatched);
        }
        if (e instanceof MissingParameterException missing) {
            return missing(missing);
        }
        if (e instanceof OverwrittenOptionException twice) {
            return Message.text("wrong.twice", name(twice.getOverwritten()));
        }
        if (e.getCause() instanceof TypeConversionException refused && e.getArgSpec() != null) {
            return Message.text("wrong.value", name(e.getArgSpec()), reason(e, refused));
        }
        return e.getMessage();
    }

    private static String unmatched(UnmatchedArgumentException e) {
        String first = e.getUnmatched().get(0);
        if (e.isUnknownOption()) {
            return Message.text("wrong.unknownOption", first);
        }
        if (e.getCommandLine().getParent() != null) {
            return Message.text("wrong.surplus", first);
        }
        List<String> similar = e.getSuggestions();
        String unknown = Message.text("wrong.unknownCommand", first);
        return similar.isEmpty() ? unknown : unknown + " " + Message.text("wrong.similar", String.join(", ", similar));
    }

    private static String missing(MissingParameterException e) {
        ArgSpec first = e.getMissing().get(0);
        if (e.getMissing().size() == 1 && !first.required()) {
            return Message.text("wrong.noValue", name(first), first.paramLabel());
        }
        return Message.text(
                "wrong.missing", e.getMissing().stream().map(UsageText::form).collect(Collectors.joining(", ")));
    }

    /** Values of enumerations are refused by picocli, which knows the type; others by converters of this program. */
    private static String reason(ParameterException e, TypeConversionException refused) {
        Class<?> type = e.getArgSpec().auxiliaryTypes()[0];
        if (type == boolean.class || type == Boolean.class) {
            return Message.text("typed.switch", e.getValue());
        }
        if (type.isEnum() && e.getArgSpec().converters().length == 0) {
            String words = Arrays.stream(type.getEnumConstants())
                    .map(c -> ((Enum<?>) c).name().toLowerCase(Locale.ROOT))
                    .collect(Collectors.joining(", "));
            return Message.text("typed.oneOf", e.getValue(), words);
        }
        return refused.getMessage();
    }

    private static String name(ArgSpec argument) {
        return argument instanceof OptionSpec option ? option.longestName() : argument.paramLabel();
    }

    private static String form(ArgSpec argument) {
        return argument instanceof PositionalParamSpec
                ? argument.paramLabel()
                : name(argument) + " " + argument.paramLabel();
    }
}
