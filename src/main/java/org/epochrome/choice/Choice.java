package org.epochrome.choice;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * Declares a component of a record as a choice of the user. Session files, the command line and the window follow it; its default is the
 * value in the record's usual instance.
 */
@Retention(RetentionPolicy.RUNTIME)
@Target({ElementType.RECORD_COMPONENT, ElementType.FIELD, ElementType.PARAMETER})
public @interface Choice {
    /** Its key in session files; the component's name if empty. */
    String key() default "";

    /** Its option on the command line, without the hyphens; if empty, the key with hyphens: air-flattening for airFlattening. */
    String option() default "";
}
