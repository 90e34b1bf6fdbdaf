package org.broodbench.sky;

import java.util.List;
import java.util.Locale;

/**
 * Usual weather of the demonstration world. Every number is invented, own choice, in the range that
 * climate tables give for such country; no place is meant by any of them. A southern climate has
 * its summer in January.
 */
public enum Climate {
  /** An upland valley at about 47 degrees north and 900 m. */
  UPLAND(MonthlyNormals.UPLAND_VALLEY),

  /** A forest valley near the Arctic Circle, far from the sea: dry snow until late April. */
  FAR_NORTH(
      new MonthlyNormals(
          List.of(
              new MonthlyNormals.Month(-8.0, -17.0, 7.5, 0.30, 0.35, 2.5, 1.8),
              new MonthlyNormals.Month(-6.5, -16.5, 7.0, 0.42, 0.32, 2.3, 1.9),
              new MonthlyNormals.Month(-0.5, -11.0, 5.2, 0.50, 0.32, 2.5, 2.2),
              new MonthlyNormals.Month(5.0, -5.0, 3.8, 0.52, 0.33, 3.0, 2.4),
              new MonthlyNormals.Month(12.0, 1.0, 3.8, 0.50, 0.38, 4.0, 2.6),
              new MonthlyNormals.Month(18.0, 7.0, 3.5, 0.48, 0.42, 5.5, 2.5),
              new MonthlyNormals.Month(20.5, 9.5, 3.0, 0.47, 0.45, 6.5, 2.3),
              new MonthlyNormals.Month(17.5, 7.0, 3.0, 0.45, 0.46, 6.5, 2.2),
              new MonthlyNormals.Month(11.0, 2.5, 3.2, 0.42, 0.48, 5.5, 2.2),
              new MonthlyNormals.Month(3.5, -2.5, 3.8, 0.36, 0.46, 4.5, 2.1),
              new MonthlyNormals.Month(-3.0, -9.0, 5.5, 0.28, 0.42, 3.5, 1.9),
              new MonthlyNormals.Month(-7.0, -15.0, 7.0, 0.20, 0.38, 2.8, 1.8)))),

  /** A high dry plain at the edge of a desert, about 34 degrees north: frost nights in spring. */
  DESERT_EDGE(
      new MonthlyNormals(
          List.of(
              new MonthlyNormals.Month(12.0, -4.0, 3.2, 0.60, 0.08, 4.0, 2.2),
              new MonthlyNormals.Month(15.5, -2.0, 3.5, 0.62, 0.09, 4.0, 2.6),
              new MonthlyNormals.Month(21.0, 1.0, 4.0, 0.64, 0.08, 4.0, 3.0),
              new MonthlyNormals.Month(26.5, 5.0, 3.8, 0.65, 0.07, 4.0, 3.2),
              new MonthlyNormals.Month(31.5, 10.0, 3.2, 0.67, 0.04, 3.5, 3.0),
              new MonthlyNormals.Month(36.5, 15.0, 2.5, 0.68, 0.02, 3.0, 2.8),
              new MonthlyNormals.Month(38.5, 18.5, 2.0, 0.66, 0.03, 5.0, 2.6),
              new MonthlyNormals.Month(37.5, 18.0, 2.0, 0.66, 0.03, 5.0, 2.5),
              new MonthlyNormals.Month(33.5, 13.5, 2.4, 0.66, 0.02, 4.0, 2.4),
              new MonthlyNormals.Month(26.5, 7.5, 3.2, 0.65, 0.04, 5.0, 2.3),
              new MonthlyNormals.Month(18.5, 1.0, 3.2, 0.61, 0.06, 5.0, 2.1),
              new MonthlyNormals.Month(13.0, -3.0, 3.2, 0.58, 0.08, 4.5, 2.1)))),

  /** A windy valley behind a cool coast, about 42 degrees south. */
  SOUTHERN(
      new MonthlyNormals(
          List.of(
              new MonthlyNormals.Month(22.0, 10.5, 3.2, 0.50, 0.32, 6.0, 3.2),
              new MonthlyNormals.Month(22.0, 10.5, 3.2, 0.50, 0.28, 6.0, 3.0),
              new MonthlyNormals.Month(20.0, 9.0, 3.0, 0.48, 0.32, 6.0, 2.8),
              new MonthlyNormals.Month(17.0, 6.5, 2.8, 0.45, 0.38, 6.0, 2.6),
              new MonthlyNormals.Month(14.0, 4.5, 2.6, 0.42, 0.44, 6.0, 2.5),
              new MonthlyNormals.Month(11.5, 2.5, 2.4, 0.39, 0.46, 6.0, 2.5),
              new MonthlyNormals.Month(11.0, 1.8, 2.4, 0.40, 0.50, 6.0, 2.6),
              new MonthlyNormals.Month(12.2, 2.5, 2.5, 0.42, 0.50, 6.0, 3.0),
              new MonthlyNormals.Month(14.5, 3.8, 2.8, 0.45, 0.48, 6.0, 3.4),
              new MonthlyNormals.Month(16.8, 5.5, 3.0, 0.47, 0.47, 6.0, 3.5),
              new MonthlyNormals.Month(18.8, 7.5, 3.1, 0.48, 0.42, 6.0, 3.4),
              new MonthlyNormals.Month(20.8, 9.3, 3.2, 0.49, 0.38, 6.0, 3.3)))),

  /** Roofs of a town near the sea, about 52 degrees north: mild nights, much wind. */
  TOWN(
      new MonthlyNormals(
          List.of(
              new MonthlyNormals.Month(6.5, 2.0, 3.4, 0.30, 0.48, 4.5, 4.6),
              new MonthlyNormals.Month(7.5, 2.0, 3.4, 0.36, 0.44, 4.2, 4.4),
              new MonthlyNormals.Month(11.0, 3.8, 3.2, 0.41, 0.42, 4.0, 4.2),
              new MonthlyNormals.Month(14.8, 6.0, 2.9, 0.45, 0.38, 4.2, 3.9),
              new MonthlyNormals.Month(18.5, 9.3, 2.9, 0.47, 0.38, 5.0, 3.7),
              new MonthlyNormals.Month(21.2, 12.2, 2.7, 0.47, 0.38, 6.0, 3.6),
              new MonthlyNormals.Month(23.3, 14.3, 2.6, 0.47, 0.38, 6.5, 3.6),
              new MonthlyNormals.Month(23.0, 14.2, 2.5, 0.46, 0.40, 6.5, 3.5),
              new MonthlyNormals.Month(19.6, 11.5, 2.4, 0.43, 0.40, 6.0, 3.6),
              new MonthlyNormals.Month(15.0, 8.5, 2.7, 0.38, 0.46, 6.0, 3.9),
              new MonthlyNormals.Month(10.2, 5.0, 3.0, 0.31, 0.48, 5.5, 4.2),
              new MonthlyNormals.Month(7.2, 2.8, 3.3, 0.27, 0.50, 5.0, 4.5)))),

  /** Open plains far from any sea, about 43 degrees north: late cold, then sudden summer. */
  PLAINS(
      new MonthlyNormals(
          List.of(
              new MonthlyNormals.Month(-2.0, -12.0, 6.5, 0.48, 0.22, 3.0, 3.6),
              new MonthlyNormals.Month(1.0, -9.5, 6.3, 0.51, 0.22, 3.5, 3.7),
              new MonthlyNormals.Month(7.5, -3.5, 5.5, 0.52, 0.25, 5.0, 4.0),
              new MonthlyNormals.Month(15.0, 2.5, 4.8, 0.51, 0.30, 7.0, 4.2),
              new MonthlyNormals.Month(21.5, 9.0, 4.0, 0.52, 0.34, 8.5, 3.8),
              new MonthlyNormals.Month(27.0, 14.5, 3.4, 0.55, 0.33, 9.5, 3.4),
              new MonthlyNormals.Month(30.0, 17.0, 2.9, 0.58, 0.28, 9.5, 3.0),
              new MonthlyNormals.Month(29.0, 15.8, 3.0, 0.57, 0.28, 9.5, 2.9),
              new MonthlyNormals.Month(24.0, 10.0, 3.8, 0.55, 0.26, 9.0, 3.1),
              new MonthlyNormals.Month(16.5, 3.5, 4.5, 0.53, 0.23, 7.5, 3.4),
              new MonthlyNormals.Month(7.0, -3.5, 5.3, 0.47, 0.22, 5.0, 3.6),
              new MonthlyNormals.Month(0.0, -9.8, 6.0, 0.44, 0.22, 3.5, 3.5))));

  private final MonthlyNormals normals;

  Climate(MonthlyNormals normals) {
    this.normals = normals;
  }

  /** The twelve months. */
  public MonthlyNormals normals() {
    return normals;
  }

  /** The word for it in scenario files. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The climate of a word. */
  public static Climate of(String word) {
    return valueOf(word.toUpperCase(Locale.ROOT));
  }
}
