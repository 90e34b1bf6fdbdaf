package org.broodbench.output;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Colours for temperatures, dark blue for cold to pale yellow for warm, in even steps.
 *
 * <p>The steps are even in Oklab (B. Ottosson, 2020), in which equal distances look about equally
 * large; lightness rises from step to step, and blue against yellow is the pair that people with
 * the common forms of colour blindness tell apart, so the scale reads in grey as well.
 */
final class HeatScale {
  /** Number of colours. */
  static final int STEPS = 32;

  private static final int COLD = 0x1b2a63;
  private static final int WARM = 0xfff3b0;

  private final double lowC;
  private final double highC;

  /** A scale between two temperatures, °C. */
  HeatScale(double lowC, double highC) {
    this.lowC = lowC;
    this.highC = highC;
  }

  double lowC() {
    return lowC;
  }

  double highC() {
    return highC;
  }

  /** The colour of a temperature; beyond an end, the end's; grey for none. */
  String colour(double c) {
    if (Double.isNaN(c)) {
      return "none";
    }
    double share = (c - lowC) / (highC - lowC);
    int step = (int) Math.floor(share * STEPS);
    return colours().get(Math.max(0, Math.min(STEPS - 1, step)));
  }

  /** All colours from cold to warm. */
  static List<String> colours() {
    double[] cold = oklab(COLD);
    double[] warm = oklab(WARM);
    List<String> all = new ArrayList<>();
    for (int i = 0; i < STEPS; i++) {
      double t = i / (STEPS - 1.0);
      double[] lab = new double[3];
      for (int k = 0; k < 3; k++) {
        lab[k] = cold[k] + t * (warm[k] - cold[k]);
      }
      all.add(String.format(Locale.ROOT, "#%06x", rgb(lab)));
    }
    return all;
  }

  /** Oklab of a colour of the page. */
  static double[] oklab(int rgb) {
    double r = linear(rgb >> 16 & 255);
    double g = linear(rgb >> 8 & 255);
    double b = linear(rgb & 255);
    double l = StrictMath.cbrt(0.4122214708 * r + 0.5363325363 * g + 0.0514459929 * b);
    double m = StrictMath.cbrt(0.2119034982 * r + 0.6806995451 * g + 0.1073969566 * b);
    double s = StrictMath.cbrt(0.0883024619 * r + 0.2817188376 * g + 0.6299787005 * b);
    return new double[] {
      0.2104542553 * l + 0.7936177850 * m - 0.0040720468 * s,
      1.9779984951 * l - 2.4285922050 * m + 0.4505937099 * s,
      0.0259040371 * l + 0.7827717662 * m - 0.8086757660 * s
    };
  }

  private static int rgb(double[] lab) {
    double l = cube(lab[0] + 0.3963377774 * lab[1] + 0.2158037573 * lab[2]);
    double m = cube(lab[0] - 0.1055613458 * lab[1] - 0.0638541728 * lab[2]);
    double s = cube(lab[0] - 0.0894841775 * lab[1] - 1.2914855480 * lab[2]);
    int r = code(4.0767416621 * l - 3.3077115913 * m + 0.2309699292 * s);
    int g = code(-1.2684380046 * l + 2.6097574011 * m - 0.3413193965 * s);
    int b = code(-0.0041960863 * l - 0.7034186147 * m + 1.7076147010 * s);
    return r << 16 | g << 8 | b;
  }

  private static double cube(double x) {
    return x * x * x;
  }

  /** IEC 61966-2-1. */
  static double linear(int code) {
    double c = code / 255.0;
    return c <= 0.04045 ? c / 12.92 : StrictMath.pow((c + 0.055) / 1.055, 2.4);
  }

  private static int code(double linear) {
    double x = Math.max(0, Math.min(1, linear));
    double c = x <= 0.0031308 ? 12.92 * x : 1.055 * StrictMath.pow(x, 1 / 2.4) - 0.055;
    return (int) Math.rint(255 * c);
  }
}
