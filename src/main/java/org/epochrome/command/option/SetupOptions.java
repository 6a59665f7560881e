package org.epochrome.command.option;

import org.epochrome.session.recipe.Setup;
import org.epochrome.text.Message;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** How the camera looked at the sky. */
final class SetupOptions {
    private final ChoiceOptions<Setup> choices = new ChoiceOptions<>(Setup.class);

    @Mixin
    final CommandSpec options = choices.spec();

    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    /** The setup of a session, overridden by the options given. */
    Setup over(Setup before) {
        choices.given("scale", Double.class).filter(scale -> !(scale > 0)).ifPresent(scale -> {
            throw new ParameterException(spec.commandLine(), Message.text("option.scale", scale));
        });
        return choices.over(before);
    }
}
