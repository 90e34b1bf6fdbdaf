package org.broodbench.matter;

import java.util.function.DoubleUnaryOperator;

/**
 * A smooth function of temperature as cubic pieces between equal knots, for the simulation step:
 * two products and sums a piece decide, so every machine computes the same bits. Values and slopes
 * at the knots are those of the function (cubic Hermite interpolation, any text on numerical
 * analysis); the error goes with the fourth power of the spacing. Beyond its ends the end values
 * hold.
 */
public final class SmoothTable {
  private final double lowC;
  private final double perK;
  private final int cells;
  private final double[] piece;

  /**
   * Samples a function.
   *
   * @param lowC first knot, °C
   * @param highC last knot, °C
   * @param perK knots in a kelvin
   */
  public SmoothTable(double lowC, double highC, int perK, DoubleUnaryOperator function) {
    this.lowC = lowC;
    this.perK = perK;
    cells = (int) Math.round((highC - lowC) * perK);
    piece = new double[4 * cells];
    double widthK = 1.0 / perK;
    for (int i = 0; i < cells; i++) {
      double c = lowC + i * widthK;
      double from = function.applyAsDouble(c);
      double to = function.applyAsDouble(c + widthK);
      double slopeFrom = slope(function, c) * widthK;
      double slopeTo = slope(function, c + widthK) * widthK;
      piece[4 * i] = from;
      piece[4 * i + 1] = slopeFrom;
      piece[4 * i + 2] = 3 * (to - from) - 2 * slopeFrom - slopeTo;
      piece[4 * i + 3] = 2 * (from - to) + slopeFrom + slopeTo;
    }
  }

  /** Five-point difference; its error is far below that of the pieces. */
  private static double slope(DoubleUnaryOperator f, double c) {
    double h = 0.01;
    return (8 * (f.applyAsDouble(c + h) - f.applyAsDouble(c - h))
            - (f.applyAsDouble(c + 2 * h) - f.applyAsDouble(c - 2 * h)))
        / (12 * h);
  }

  /** The function at a temperature, °C. */
  public double at(double c) {
    double u = (c - lowC) * perK;
    u = u > 0 ? u : 0;
    u = u < cells ? u : cells;
    int i = (int) u;
    i = i < cells ? i : cells - 1;
    double f = u - i;
    int p = 4 * i;
    return piece[p] + f * (piece[p + 1] + f * (piece[p + 2] + f * piece[p + 3]));
  }
}
