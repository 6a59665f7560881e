package org.epochrome.session.product;

import org.epochrome.choice.Choice;
import org.epochrome.choice.Choices;
import org.epochrome.colour.finish.Look;
import org.epochrome.session.recipe.Recipe;

/**
 * All that a user chooses, as one value: what a session file holds.
 *
 * @param recipe how the linear colour picture is made
 * @param look how finished pictures look
 * @param products the files that are to be made
 */
public record Session(
        @Choice Recipe recipe,
        @Choice Look look,
        @Choice(key = "outputs") Products products) implements Choices<Session> {
    /** A recipe with the usual look and no files. */
    public static Session usual(Recipe recipe) {
        return new Session(recipe, Look.DEFAULT, Products.NONE);
    }

    /** This session with another recipe. */
    public Session with(Recipe other) {
        return new Session(other, look, products);
    }

    /** This session with another look. */
    public Session with(Look other) {
        return new Session(recipe, other, products);
    }

    /** This session with other files to write. */
    public Session with(Products other) {
        return new Session(recipe, look, other);
    }
}
