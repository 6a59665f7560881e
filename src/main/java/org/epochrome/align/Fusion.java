package org.epochrome.align;

import java.util.ArrayList;
import java.util.List;

/**
 * Weighs what the limb and the detail say about where the disks lie. The limb knows every frame's disk on its own; the
 * detail knows how each frame lies against the reference frame, mostly better. Per axis the corrections {@code e} to the
 * limb's centres minimise {@code sum (e_i / s_i)^2 + sum ((e_i - e_ref - d_i) / t_i)^2}, with s the limb's and t the
 * detail's standard errors and d the detail's shifts.
 */
public final class Fusion {
    private Fusion() {}

    /**
     * The corrections to the centres found by the limb.
     *
     * @param limbSigmaPx standard error per axis of each frame's centre
     * @param detail shift of each frame's detail against the reference's; the reference's own entry is ignored
     * @param reference index of the reference frame
     */
    public static List<Shift> corrections(List<Double> limbSigmaPx, List<Shift> detail, int reference) {
        double[] x = axis(limbSigmaPx, detail.stream().map(Shift::x).toList(), sigmas(detail, true), reference);
        double[] y = axis(limbSigmaPx, detail.stream().map(Shift::y).toList(), sigmas(detail, false), reference);
        List<Shift> result = new ArrayList<>();
        for (int i = 0; i < detail.size(); i++) {
            double sx = sigma(limbSigmaPx, sigmas(detail, true), reference, i);
            double sy = sigma(limbSigmaPx, sigmas(detail, false), reference, i);
            result.add(new Shift(x[i], y[i], sx, sy));
        }
        return result;
    }

    private static List<Double> sigmas(List<Shift> detail, boolean alongX) {
        return detail.stream().map(s -> alongX ? s.sigmaX() : s.sigmaY()).toList();
    }

    /** Eliminating each frame but the reference leaves one equation for the reference's own correction. */
    private static double[] axis(List<Double> limb, List<Double> shift, List<Double> sigma, int reference) {
        double weight = 1 / square(limb.get(reference));
        double sum = 0;
        for (int i = 0; i < limb.size(); i++) {
            if (i != reference) {
                // e_i = e_ref + d_i against e_i = 0: together one datum e_ref = -d_i.
                double w = 1 / (square(limb.get(i)) + square(sigma.get(i)));
                weight += w;
                sum -= w * shift.get(i);
            }
        }
        double own = sum / weight;
        double[] e = new double[limb.size()];
        for (int i = 0; i < e.length; i++) {
            double part = square(limb.get(i)) / (square(limb.get(i)) + square(sigma.get(i)));
            e[i] = i == reference ? own : part * (own + shift.get(i));
        }
        return e;
    }

    private static double sigma(List<Double> limb, List<Double> sigma, int reference, int frame) {
        if (frame == reference) {
            return limb.get(frame);
        }
        return Math.sqrt(1 / (1 / square(limb.get(frame)) + 1 / (square(sigma.get(frame)) + 1e-12)));
    }

    private static double square(double v) {
        return v * v;
    }
}
