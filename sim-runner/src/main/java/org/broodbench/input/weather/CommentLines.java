package org.broodbench.input.weather;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.broodbench.sky.Place;
import org.broodbench.sky.Stand;
import org.broodbench.sky.Variable;

/** The lines {@code # key: value} above the header of our own files. */
final class CommentLines {
  private static final Variable[] VARIABLES = Variable.values();

  private final ProblemList problems;
  private final Map<String, String> texts = new HashMap<>();
  private final Map<String, Integer> lines = new HashMap<>();

  CommentLines(ProblemList problems) {
    this.problems = problems;
  }

  /** Reads up to the header, which is then the current line; false where there is none. */
  boolean read(LineSource source) {
    boolean more;
    while ((more = source.next()) && (source.isBlank() || source.text().startsWith("#"))) {
      String text = source.utf8();
      int colon = text.indexOf(':');
      if (colon > 1) {
        String key = text.substring(1, colon).strip();
        texts.put(key, text.substring(colon + 1).strip());
        lines.put(key, source.number());
      }
    }
    return more;
  }

  /** The text of a key, empty where it is not there. */
  String text(String key) {
    return texts.getOrDefault(key, "");
  }

  double number(String key, double low, double high, double otherwise) {
    String text = texts.get(key);
    if (text == null) {
      return otherwise;
    }
    double value;
    try {
      value = Double.parseDouble(text);
    } catch (NumberFormatException e) {
      value = Double.NaN;
    }
    if (!(value >= low && value <= high)) {
      problems.add(lines.get(key), 1, key, text, low + " to " + high, "");
      return otherwise;
    }
    return value;
  }

  Optional<Place> place() {
    double latitude = number("latitude_deg", -90, 90, Double.NaN);
    double longitude = number("longitude_deg", -180, 180, Double.NaN);
    double altitude = number("altitude_m", -500, 9000, Double.NaN);
    boolean all = !Double.isNaN(latitude) && !Double.isNaN(longitude) && !Double.isNaN(altitude);
    return all ? Optional.of(new Place(latitude, longitude, altitude)) : Optional.empty();
  }

  Stand[] stands() {
    Stand[] stands = new Stand[VARIABLES.length];
    Arrays.fill(stands, Stand.MEAN);
    for (Variable v : VARIABLES) {
      String key = "stand " + v.column();
      String text = texts.get(key);
      if (text == null) {
        continue;
      }
      String[] words = text.split("\\s+");
      boolean good =
          words.length == 2
              && (words[0].equals("instant") || words[0].equals("mean"))
              && words[1].matches("-?\\d{1,6}(\\.\\d+)?");
      if (good) {
        stands[v.ordinal()] = new Stand(words[0].equals("mean"), Double.parseDouble(words[1]));
      } else {
        problems.add(lines.get(key), 1, key, text, "instant or mean, and seconds", "");
      }
    }
    return stands;
  }
}
