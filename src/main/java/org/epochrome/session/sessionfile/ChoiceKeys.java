package org.epochrome.session.sessionfile;

import com.fasterxml.jackson.databind.JavaType;
import com.fasterxml.jackson.databind.PropertyName;
import com.fasterxml.jackson.databind.cfg.MapperConfig;
import com.fasterxml.jackson.databind.introspect.Annotated;
import com.fasterxml.jackson.databind.introspect.AnnotatedClass;
import com.fasterxml.jackson.databind.introspect.NopAnnotationIntrospector;
import java.util.Locale;
import java.util.Optional;
import org.epochrome.choice.Choice;
import org.epochrome.ephemeris.RotationSystem;

/** Tells Jackson the keys that {@link Choice} declares, and how constants are spelled. */
final class ChoiceKeys extends NopAnnotationIntrospector {
    private static final long serialVersionUID = 1L;

    /** A constant as files and command lines name it: north-up for NORTH_UP. */
    static String word(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    @Override
    public PropertyName findNameForSerialization(Annotated a) {
        return key(a);
    }

    @Override
    public PropertyName findNameForDeserialization(Annotated a) {
        return key(a);
    }

    private static PropertyName key(Annotated a) {
        Choice choice = a.getAnnotation(Choice.class);
        return choice == null || choice.key().isEmpty() ? null : PropertyName.construct(choice.key());
    }

    @Override
    public String[] findEnumValues(MapperConfig<?> config, AnnotatedClass type, Enum<?>[] constants, String[] names) {
        for (int i = 0; i < constants.length; i++) {
            names[i] = word(constants[i]);
        }
        return names;
    }

    @Override
    public Object findSerializer(Annotated a) {
        return isSystem(a.getType()) ? SessionModule.systemWriting() : null;
    }

    @Override
    public Object findDeserializer(Annotated a) {
        return isSystem(a.getType()) ? SessionModule.systemReading() : null;
    }

    private static boolean isSystem(JavaType type) {
        return type != null
                && type.hasRawClass(Optional.class)
                && type.containedType(0) != null
                && type.containedType(0).hasRawClass(RotationSystem.class);
    }
}
