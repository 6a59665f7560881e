package org.epochrome.choice;

import java.lang.reflect.Constructor;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;

/**
 * A component of a record, and how it is declared as a choice.
 *
 * @param component of the record
 */
public record RecordChoice(RecordComponent component) {
    /** All components of a record, in their order. */
    public static List<RecordChoice> of(Class<?> type) {
        return Arrays.stream(type.getRecordComponents()).map(RecordChoice::new).toList();
    }

    private Optional<Choice> declared() {
        return Optional.ofNullable(component.getAnnotation(Choice.class));
    }

    /** The component's name. */
    public String name() {
        return component.getName();
    }

    /** Its key in session files. */
    public String key() {
        return declared().map(Choice::key).filter(key -> !key.isEmpty()).orElse(name());
    }

    /** Its option on the command line, without hyphens before it. */
    public String option() {
        return declared()
                .map(Choice::option)
                .filter(option -> !option.isEmpty())
                .orElseGet(() -> key().replaceAll("([A-Z])", "-$1").toLowerCase(Locale.ROOT));
    }

    /** The type of its values. */
    public Type type() {
        return component.getGenericType();
    }

    /** Its value in a record. */
    public Object of(Record record) {
        try {
            component.getAccessor().setAccessible(true);
            return component.getAccessor().invoke(record);
        } catch (ReflectiveOperationException e) {
            throw new LinkageError("a component can always be read", e);
        }
    }

    /**
     * A record of a record's type with other values.
     *
     * @param values the value of each component
     * @throws IllegalArgumentException if the constructor refuses one
     */
    @SuppressWarnings("unchecked")
    public static <R extends Record> R copy(R record, Function<RecordChoice, Object> values) {
        List<RecordChoice> choices = of(record.getClass());
        Class<?>[] types = choices.stream().map(c -> c.component.getType()).toArray(Class<?>[]::new);
        try {
            Constructor<?> constructor = record.getClass().getDeclaredConstructor(types);
            return (R) constructor.newInstance(choices.stream().map(values).toArray());
        } catch (InvocationTargetException e) {
            if (e.getCause() instanceof RuntimeException refusal) {
                throw refusal;
            }
            throw new LinkageError("a record throws no checked exceptions", e);
        } catch (ReflectiveOperationException e) {
            throw new LinkageError("a record has a constructor of its components", e);
        }
    }
}
