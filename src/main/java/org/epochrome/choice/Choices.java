package org.epochrome.choice;

import java.io.Serializable;
import java.lang.invoke.SerializedLambda;
import java.lang.reflect.Method;
import java.util.function.Function;

/**
 * A record of choices, a copy of which can differ in one of them.
 *
 * @param <R> the record itself
 */
public interface Choices<R extends Record & Choices<R>> {
    /**
     * A component of a record, as its accessor: {@code Corrections::turn}.
     *
     * @param <R> the record
     * @param <T> the component's type
     */
    interface Component<R, T> extends Function<R, T>, Serializable {}

    /**
     * A copy with another value of one component.
     *
     * @param component its accessor
     * @throws IllegalArgumentException if the record's constructor refuses the value
     */
    @SuppressWarnings("unchecked")
    default <T> R with(Component<? super R, T> component, T value) {
        String name = name(component);
        return RecordChoice.copy((R) this, choice -> choice.name().equals(name) ? value : choice.of((R) this));
    }

    /** The name of the accessor that was written where a component is asked for: Java keeps it for serialization. */
    private static String name(Component<?, ?> component) {
        try {
            Method form = component.getClass().getDeclaredMethod("writeReplace");
            form.setAccessible(true);
            return ((SerializedLambda) form.invoke(component)).getImplMethodName();
        } catch (ReflectiveOperationException e) {
            throw new LinkageError("a component must be given as its accessor, such as Corrections::turn", e);
        }
    }
}
