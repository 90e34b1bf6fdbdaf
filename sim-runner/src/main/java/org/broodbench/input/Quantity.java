package org.broodbench.input;

import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.broodbench.matter.Dimension;
import org.broodbench.matter.Unit;
import org.broodbench.matter.Units;

/**
 * A number with its unit, as people write it: "32 °C", "2.5 mm2", "1 1/2 in", "2 ft 3 in", "1 h 30
 * min", "14 AWG".
 *
 * @param base value in the base unit of the dimension
 * @param dimension what was measured
 * @param text as it was written
 */
public record Quantity(double base, Dimension dimension, String text) {
  private static final String DECIMAL = "[+-]?(?:\\d+(?:\\.\\d*)?|\\.\\d+)(?:[eE][+-]?\\d+)?";
  private static final Pattern GROUPED = Pattern.compile("\\d{1,3}(?:[ ,'_]\\d{3})+(?!\\d)");
  private static final Pattern COMMA = Pattern.compile("(\\d),(\\d)");
  private static final Pattern MIXED = Pattern.compile("([+-]?\\d+)\\s+(\\d+)/(\\d+)(?!\\d)");
  private static final Pattern FRACTION = Pattern.compile("([+-]?\\d+)/(\\d+)(?!\\d)");
  private static final Pattern PLAIN = Pattern.compile(DECIMAL);

  /** A unit ends where the next number begins, which always follows a blank. */
  private static final Pattern UNIT = Pattern.compile("\\s*(.*?)\\s*(?=$|(?<=\\s)[+-]?\\.?\\d)");

  private static final Pattern GAUGE =
      Pattern.compile("(?i)(?:awg\\s*(\\d+)(/0)?|(\\d+)(/0)?\\s*awg)");
  private static final int THINNEST_GAUGE = 40;
  private static final int THICKEST_AUGHTS = 4;

  private record Part(double number, Unit unit) {}

  /**
   * Reads a text.
   *
   * @throws QuantityRefused with what is allowed instead
   */
  static Quantity parse(String text, Dimension dimension) throws QuantityRefused {
    String clean = tidy(text);
    if (clean.isEmpty()) {
      throw refused(dimension, "");
    }
    refuseSeparators(clean, dimension);
    if (dimension == Dimension.AREA) {
      Matcher gauge = GAUGE.matcher(clean);
      if (gauge.matches()) {
        return new Quantity(gaugeM2(gauge), dimension, text);
      }
    }
    double base = 0;
    Part last = null;
    int at = 0;
    while (at < clean.length()) {
      Matcher number = numberAt(clean, at, dimension);
      Matcher unit = UNIT.matcher(clean).region(number.end(), clean.length());
      unit.useTransparentBounds(true);
      if (!unit.lookingAt()) {
        throw refused(dimension, "");
      }
      Part part =
          new Part(valueOf(number, dimension), unitNamed(unit.group(1), number.group(), dimension));
      if (last == null) {
        base = part.unit().toBase(part.number());
      } else {
        base += furtherPart(last, part, dimension, clean);
      }
      last = part;
      at = unit.end();
    }
    if (!Double.isFinite(base)) {
      throw refused(dimension, "");
    }
    return new Quantity(base, dimension, text);
  }

  private static String tidy(String text) {
    return text.replace('\u00a0', ' ')
        .replace('\u202f', ' ')
        .replace('\u2009', ' ')
        .replace('\u2212', '-')
        .replace("½", " 1/2")
        .replace("¼", " 1/4")
        .replace("¾", " 3/4")
        .strip();
  }

  private static void refuseSeparators(String text, Dimension dimension) throws QuantityRefused {
    Matcher grouped = GROUPED.matcher(text);
    if (grouped.find()) {
      String found = grouped.group();
      String joined = found.replaceAll("[ ,'_]", "");
      String hint = "Separators of thousands are not read: write " + joined + ".";
      if (found.matches("\\d+,\\d{3}")) {
        hint =
            "A comma is not read: write "
                + joined
                + ", or "
                + found.replace(',', '.')
                + " if a decimal was meant.";
      }
      throw refused(dimension, hint);
    }
    Matcher comma = COMMA.matcher(text);
    if (comma.find()) {
      throw refused(
          dimension, "The decimal sign is a point: write \"" + comma.replaceAll("$1.$2") + "\".");
    }
  }

  private static Matcher numberAt(String text, int at, Dimension dimension) throws QuantityRefused {
    for (Pattern pattern : List.of(MIXED, FRACTION, PLAIN)) {
      Matcher matcher = pattern.matcher(text).region(at, text.length());
      if (matcher.lookingAt()) {
        return matcher;
      }
    }
    throw refused(dimension, at == 0 ? "The number comes first, then the unit." : "");
  }

  private static double valueOf(Matcher number, Dimension dimension) throws QuantityRefused {
    if (number.pattern() == PLAIN) {
      return Double.parseDouble(number.group());
    }
    int groups = number.groupCount();
    double below = Double.parseDouble(number.group(groups));
    if (below == 0) {
      throw refused(dimension, "A fraction cannot be divided by 0.");
    }
    double share = Double.parseDouble(number.group(groups - 1)) / below;
    if (number.pattern() == FRACTION) {
      return share;
    }
    double whole = Double.parseDouble(number.group(1));
    return number.group(1).startsWith("-") ? whole - share : whole + share;
  }

  private static Unit unitNamed(String name, String number, Dimension dimension)
      throws QuantityRefused {
    String spelled = name.replaceAll("\\s+", " ");
    Optional<Unit> found = Units.find(dimension, spelled);
    if (found.isPresent()) {
      if (found.get().spelling().equals(Units.WIRE_GAUGE)) {
        throw refused(dimension, "A wire gauge is a whole number from 4/0 to 40: \"14 AWG\".");
      }
      return found.get();
    }
    if (spelled.isEmpty()) {
      String first = Units.of(dimension).get(0).spelling();
      throw refused(dimension, "The unit is missing: \"" + number + " " + first + "\"?");
    }
    for (Unit unit : Units.of(dimension)) {
      if (unit.spelling().equalsIgnoreCase(spelled)) {
        throw refused(
            dimension, "Capital letters count in a unit: did you mean " + unit.spelling() + "?");
      }
    }
    for (Unit unit : Units.all()) {
      if (unit.spelling().equals(spelled) || unit.symbol().equals(spelled)) {
        throw refused(dimension, spelled + " is a unit of " + unit.dimension().words() + ".");
      }
    }
    String near =
        DidYouMean.closest(spelled, Units.of(dimension).stream().flatMap(Quantity::names).toList())
            .map(unit -> " Did you mean " + unit + "?")
            .orElse("");
    throw refused(dimension, "The unit " + spelled + " is not known here." + near);
  }

  private static Stream<String> names(Unit unit) {
    return Stream.concat(Stream.of(unit.spelling()), unit.otherSpellings().stream());
  }

  /** "2 ft 3 in": the second part is of a smaller unit and carries no sign of its own. */
  private static double furtherPart(Part last, Part part, Dimension dimension, String text)
      throws QuantityRefused {
    boolean divisible =
        switch (dimension) {
          case LENGTH, TIME, MASS, VOLUME -> true;
          default -> false;
        };
    double value = part.unit().toBase(part.number());
    boolean ordered = part.unit().toBase(1) < last.unit().toBase(1);
    if (!divisible || !ordered || part.number() < 0 || text.startsWith("-")) {
      throw refused(dimension, "Write one number with one unit.");
    }
    return value;
  }

  private static double gaugeM2(Matcher gauge) throws QuantityRefused {
    boolean leading = gauge.group(1) != null;
    String digits = gauge.group(leading ? 1 : 3);
    boolean aughts = gauge.group(leading ? 2 : 4) != null;
    int written = digits.length() > 3 ? Integer.MAX_VALUE : Integer.parseInt(digits);
    if (aughts ? written < 1 || written > THICKEST_AUGHTS : written > THINNEST_GAUGE) {
      throw refused(Dimension.AREA, "A wire gauge is a whole number from 4/0 to 40.");
    }
    return Units.awgAreaM2(aughts ? 1 - written : written);
  }

  /** "a number with a unit: degC, degF, K". */
  static String allowed(List<Dimension> dimensions) {
    List<String> names =
        dimensions.stream().flatMap(d -> Units.of(d).stream()).map(Unit::spelling).toList();
    String bare = names.contains("") ? "a bare number, or " : "";
    return bare
        + "a number with a unit: "
        + names.stream().filter(n -> !n.isEmpty()).collect(Collectors.joining(", "));
  }

  private static QuantityRefused refused(Dimension dimension, String hint) {
    return new QuantityRefused(allowed(List.of(dimension)), hint);
  }
}
