package org.epochrome.align;

import java.util.List;
import java.util.Optional;
import org.epochrome.image.Plane;

/**
 * Measures how far the detail of frames lies apart, to a small part of a pixel.
 *
 * <p>Bands differ: a marking may be strong in one, faint or reversed in another. So one frame's detail is predicted from
 * the others' with gains of their own in every neighbourhood, positive or negative, and the shifts are sought for which
 * the prediction leaves least (Gauss-Newton; the gains are eliminated at every step). With three bands two kinds of
 * markings, such as dark lands and bright clouds, can be distinguished. Neighbourhoods where the bands have little
 * in common get little weight.
 */
public final class DetailWitness {
    /** Radius of a neighbourhood with one gain, in grains of the detail. */
    static final double NEIGHBOURHOOD = 5;

    private DetailWitness() {}

    /**
     * The shift of {@code other} against {@code reference}; {@link Shift#UNKNOWN} if they have too little detail in
     * common.
     *
     * @param startX where to begin the search, pixels
     * @param startY the same
     */
    public static Shift measure(List<Detail> reference, List<Detail> other, double startX, double startY) {
        return new ShiftSearch(other, List.of(reference), new double[] {startX, startY})
                .run()
                .get(0);
    }

    /**
     * The shifts of two frames in other bands against a reference, found together: once {@code first} is predicted from
     * the other two, once {@code second}, and the answers are averaged.
     *
     * @return shift of first, shift of second; unknown where there is too little in common
     */
    public static List<Shift> measure(List<Detail> reference, List<Detail> first, List<Detail> second) {
        List<Shift> one = new ShiftSearch(first, List.of(reference, second), new double[4]).run();
        List<Shift> other = new ShiftSearch(second, List.of(reference, first), new double[4]).run();
        return List.of(one.get(0).averaged(other.get(1)), one.get(1).averaged(other.get(0)));
    }

    /**
     * The shift of a frame against a reference, as the reference and a helper in a third band predict it together.
     *
     * @return unknown where there is too little in common
     */
    public static Shift predicted(List<Detail> target, List<Detail> reference, List<Detail> helper) {
        return new ShiftSearch(target, List.of(reference, helper), new double[4])
                .run()
                .get(0);
    }

    /**
     * The shift that {@link #measure(List, List, double, double)} gives, with a difference of scale and direction solved
     * for as well; empty if there is too little in common.
     */
    public static Optional<Similarity> similarity(List<Detail> reference, List<Detail> other) {
        return new ShiftSearch(other, List.of(reference), new double[4]).similarity();
    }

    /**
     * What part of the detail of {@code other} the detail of {@code reference}, taken with a gain of its own in every
     * neighbourhood, explains where it lies: 0 to 1.
     */
    public static double agreement(Detail reference, Detail other) {
        Plane weight = new Plane(other.weight().width(), other.weight().height());
        for (int i = 0; i < weight.data().length; i++) {
            weight.data()[i] = reference.weight().data()[i] * other.weight().data()[i];
        }
        double grain = Math.max(reference.spotPx(), other.spotPx());
        LocalRelation local =
                new LocalRelation(reference.markings(), null, other.markings(), weight, NEIGHBOURHOOD * grain);
        double explained = 0;
        double all = 0;
        for (int y = 0; y < weight.height(); y++) {
            for (int x = 0; x < weight.width(); x++) {
                int at = local.cell(x, y);
                explained += weight.at(x, y) * (local.total(at) - local.unexplained(at));
                all += weight.at(x, y) * local.total(at);
            }
        }
        return all > 0 ? explained / all : 0;
    }
}
