package org.epochrome.command.option;

import java.lang.reflect.ParameterizedType;
import java.lang.reflect.Type;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.ResourceBundle;
import java.util.Set;
import org.epochrome.choice.RecordChoice;
import org.epochrome.colour.Gains;
import org.epochrome.colour.finish.ChannelOffsets;
import org.epochrome.colour.finish.Framing;
import org.epochrome.colour.finish.LevelPoints;
import org.epochrome.colour.finish.ToneCurve;
import org.epochrome.session.recipe.PixelOffset;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;

/**
 * The options of a record of choices, one for each component as it is declared there. How they are typed is in * choices.properties: what stands for the value of an option by NAME.value, a short form by NAME.short. Their descriptions are * texts of the command line, as those of other options.
 *
 * @param <R> the record
 */
final class ChoiceOptions<R extends Record> {
    private static final ResourceBundle FORMS = ResourceBundle.getBundle("org.epochrome.command.option.choices");

    private static final Map<Class<?>, ITypeConverter<?>> CONVERTERS = Map.of(
            Instant.class, new Texts.Utc(),
            PixelOffset.class, new Texts.Pixels(),
            Framing.Orientation.class, new FinishTexts.WayUp(),
            Framing.Canvas.class, new FinishTexts.Size(),
            Framing.Centre.class, new FinishTexts.Middle(),
            Gains.class, new FinishTexts.Factors(),
            ChannelOffsets.class, new FinishTexts.Offsets(),
            LevelPoints.class, new FinishTexts.Levels(),
            ToneCurve.class, new FinishTexts.Curve());

    private final Map<String, OptionSpec> options = new LinkedHashMap<>();
    private final Set<String> byHand;
    private final CommandSpec spec = CommandSpec.create();

    /**
     * Makes the options.
     *
     * @param byHand those whose values {@link #over} leaves to others, and their types
     */
    ChoiceOptions(Class<R> type, Map<String, Class<?>> byHand) {
        this.byHand = byHand.keySet();
        for (RecordChoice choice : RecordChoice.of(type)) {
            String name = choice.option();
            Class<?> given = byHand.get(name);
            OptionSpec option = option(name, given == null ? choice.type() : given);
            options.put(name, option);
            spec.addOption(option);
        }
    }

    ChoiceOptions(Class<R> type) {
        this(type, Map.of());
    }

    private static OptionSpec option(String name, Type type) {
        List<String> names = new ArrayList<>();
        if (FORMS.containsKey(name + ".short")) {
            names.add("-" + FORMS.getString(name + ".short"));
        }
        names.add("--" + name);
        OptionSpec.Builder option = OptionSpec.builder(names.toArray(String[]::new));
        if (FORMS.containsKey(name + ".value")) {
            option.paramLabel(FORMS.getString(name + ".value"));
        }
        Class<?> single = single(type);
        if (single == Map.class || single == Set.class) {
            Type[] parts = ((ParameterizedType) type).getActualTypeArguments();
            Class<?> last = (Class<?>) parts[parts.length - 1];
            option.type(single).auxiliaryTypes((Class<?>) parts[0], last);
            if (single == Map.class) {
                option.converters(new Texts.Plain(), CONVERTERS.get(last));
            } else {
                option.splitRegex(",");
            }
            return option.build();
        }
        option.type(single).negatable(single == Boolean.class);
        if (name.equals("north")) {
            option.converters(new Texts.North());
        } else if (CONVERTERS.containsKey(single)) {
            option.converters(CONVERTERS.get(single));
        }
        return option.build();
    }

    /** The type that is typed: of what is optional, its content. */
    private static Class<?> single(Type type) {
        if (type instanceof ParameterizedType p) {
            return (Class<?>) (isOptional(type) ? p.getActualTypeArguments()[0] : p.getRawType());
        }
        if (type == OptionalDouble.class || type == double.class) {
            return Double.class;
        }
        if (type == OptionalInt.class || type == int.class) {
            return Integer.class;
        }
        return type == boolean.class ? Boolean.class : (Class<?>) type;
    }

    /** The options, to be mixed into a command. */
    CommandSpec spec() {
        return spec;
    }

    /** Whether any of the options is given. */
    boolean isGiven() {
        return options.keySet().stream()
                .anyMatch(name -> given(name, Object.class).isPresent());
    }

    /** What is typed for an option. */
    <T> Optional<T> given(String option, Class<T> type) {
        return Optional.ofNullable(options.get(option).getValue()).map(type::cast);
    }

    /**
     * A record, overridden by the options that are given.
     *
     * @throws IllegalArgumentException if the record refuses a value
     */
    R over(R before) {
        return RecordChoice.copy(before, choice -> given(choice.option(), Object.class)
                .filter(value -> !byHand.contains(choice.option()))
                .map(value -> as(choice.type(), value))
                .orElseGet(() -> choice.of(before)));
    }

    private static Object as(Type type, Object value) {
        if (type == OptionalDouble.class && value instanceof Double number) {
            return OptionalDouble.of(number);
        }
        if (type == OptionalInt.class) {
            return OptionalInt.of((Integer) value);
        }
        return isOptional(type) ? Optional.of(value) : value;
    }

    private static boolean isOptional(Type type) {
        return type instanceof ParameterizedType p && p.getRawType() == Optional.class;
    }
}
