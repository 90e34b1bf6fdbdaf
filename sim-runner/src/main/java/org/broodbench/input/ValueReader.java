package org.broodbench.input;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeParseException;
import org.broodbench.matter.Dimension;
import org.broodbench.matter.Units;

/** Turns one raw value into what its key declares, or words why it cannot be. */
final class ValueReader {
  /** Nothing in a hive is kept as hot as this many °C; own choice. */
  private static final double LEAST_LIKELY_FAHRENHEIT = 50;

  private ValueReader() {}

  /** Carries the fields of a problem whose place the caller knows. */
  static final class Refused extends Exception {
    private static final long serialVersionUID = 1L;
    private final String allowed;
    private final String hint;

    Refused(String allowed, String hint) {
      super(allowed);
      this.allowed = allowed;
      this.hint = hint;
    }

    String allowed() {
      return allowed;
    }

    String hint() {
      return hint;
    }
  }

  /** How a value is named in messages. */
  static String found(Object value) {
    if (value instanceof String text) {
      return text.isEmpty() ? "an empty text" : text;
    }
    if (value instanceof Double number && !Double.isFinite(number)) {
      return number.isNaN() ? "nan" : number > 0 ? "inf" : "-inf";
    }
    return String.valueOf(value);
  }

  /**
   * Reads a value.
   *
   * @return Quantity, Long, Double, String, Boolean, LocalDate, OffsetDateTime
   */
  static Object read(Key key, Object raw) throws Refused {
    return switch (key.kind()) {
      case QUANTITY -> quantity(key, raw);
      case INTEGER -> {
        if (raw instanceof Long whole) {
          yield bounded(key, whole, whole);
        }
        throw wrongType(key, "Write a whole number without quotes.", raw);
      }
      case NUMBER -> {
        if (raw instanceof Long || raw instanceof Double) {
          double number = ((Number) raw).doubleValue();
          yield bounded(key, number, number);
        }
        throw wrongType(key, "Write a number without quotes.", raw);
      }
      case TEXT -> {
        if (raw instanceof String text) {
          yield text;
        }
        throw wrongType(key, "Put it in quotes.", raw);
      }
      case CHOICE -> choice(key, raw);
      case BOOLEAN -> {
        if (raw instanceof Boolean) {
          yield raw;
        }
        throw wrongType(key, "Write true or false without quotes.", raw);
      }
      case DATE -> {
        if (raw instanceof LocalDate) {
          yield raw;
        }
        throw wrongType(key, "Write year, month and day without quotes.", raw);
      }
      case MOMENT -> moment(key, raw);
    };
  }

  /** Reads a value that came as text: from an option or as a declared default. */
  static Object readText(Key key, String text) throws Refused {
    return read(key, asToml(key, text));
  }

  private static Object asToml(Key key, String text) {
    try {
      return switch (key.kind()) {
        case INTEGER -> (Object) Long.parseLong(text.strip());
        case NUMBER -> Double.parseDouble(text.strip());
        case BOOLEAN ->
            text.strip().equals("true") || text.strip().equals("false")
                ? (Object) Boolean.valueOf(text.strip())
                : text;
        case DATE -> LocalDate.parse(text.strip());
        case MOMENT -> text.contains("T") ? OffsetDateTime.parse(text.strip()) : dateOrText(text);
        default -> text;
      };
    } catch (NumberFormatException | DateTimeParseException e) {
      return text;
    }
  }

  private static Object dateOrText(String text) {
    return text.strip().matches("\\d{4}-\\d\\d-\\d\\d") ? LocalDate.parse(text.strip()) : text;
  }

  private static Object quantity(Key key, Object raw) throws Refused {
    if (raw instanceof Long || raw instanceof Double) {
      double number = ((Number) raw).doubleValue();
      if (key.dimensions().contains(Dimension.RATIO)) {
        bounded(key, number, raw);
        return new Quantity(number, Dimension.RATIO, String.valueOf(raw));
      }
      String example = "\"" + raw + " " + key.shown().spelling() + "\"";
      throw new Refused(allowed(key), "Write the number and its unit in quotes: " + example + "?");
    }
    if (!(raw instanceof String text)) {
      throw new Refused(allowed(key), "");
    }
    QuantityRefused best = null;
    for (Dimension dimension : key.dimensions()) {
      try {
        Quantity quantity = Quantity.parse(text, dimension);
        if (dimension == key.dimensions().get(0)) {
          bounded(key, quantity.base(), raw);
        }
        return quantity;
      } catch (QuantityRefused e) {
        best = best == null || e.hint().contains("did you mean") ? e : best;
      }
    }
    throw new Refused(allowed(key), best == null ? "" : best.hint());
  }

  private static Object choice(Key key, Object raw) throws Refused {
    if (raw instanceof String word && key.choices().contains(word)) {
      return word;
    }
    String near =
        raw instanceof String word
            ? DidYouMean.closest(word, key.choices())
                .map(found -> "Did you mean " + found + "?")
                .orElse(key.help())
            : key.help();
    throw new Refused(String.join(", ", key.choices()), near);
  }

  private static Object moment(Key key, Object raw) throws Refused {
    if (raw instanceof OffsetDateTime) {
      return raw;
    }
    if (raw instanceof LocalDate day) {
      return day.atStartOfDay().atOffset(ZoneOffset.UTC);
    }
    if (raw instanceof LocalDateTime) {
      throw new Refused(
          key.kind().words(), "The zone is missing: put Z after it for UTC: " + raw + "Z.");
    }
    if (raw instanceof String text) {
      try {
        Quantity since = Quantity.parse(text, Dimension.TIME);
        if (since.base() >= 0) {
          return since;
        }
        throw new Refused(key.kind().words(), "It cannot be before the start.");
      } catch (QuantityRefused e) {
        throw new Refused(key.kind().words(), e.hint());
      }
    }
    throw new Refused(key.kind().words(), "");
  }

  private static Object bounded(Key key, double value, Object result) throws Refused {
    boolean finite = Double.isFinite(value);
    if (!finite
        || (key.low() != null && key.low().refusesBelow(value))
        || (key.high() != null && key.high().refusesAbove(value))) {
      boolean share = key.dimensions().contains(Dimension.RATIO) && value > 1 && finite;
      boolean bare = !(result instanceof String text) || text.matches("[\\d. ]+");
      String hint = share && bare ? "A share is written 0.95 or \"95 %\". " : "";
      if (fahrenheitFits(key, result)) {
        hint = "Were degrees Fahrenheit meant? Write degF. ";
      }
      throw new Refused(finite ? key.range() : "a finite number", (hint + key.help()).strip());
    }
    return result;
  }

  /** A reader of US habits may write 90 and think of °F. */
  private static boolean fahrenheitFits(Key key, Object raw) {
    if (!key.dimensions().contains(Dimension.TEMPERATURE)
        || !(raw instanceof String text)
        || text.contains("F")) {
      return false;
    }
    try {
      double celsius = Quantity.parse(text, Dimension.TEMPERATURE).base();
      double meant = Units.get(Dimension.TEMPERATURE, "degF").toBase(celsius);
      return !(key.low() != null && key.low().refusesBelow(meant))
          && !(key.high() != null && key.high().refusesAbove(meant))
          && celsius >= LEAST_LIKELY_FAHRENHEIT;
    } catch (QuantityRefused e) {
      return false;
    }
  }

  private static Refused wrongType(Key key, String hint, Object raw) {
    String range = key.range().isEmpty() ? "" : ", " + key.range();
    boolean already = raw instanceof Double;
    return new Refused(key.kind().words() + range, already ? "" : hint);
  }

  /** What may stand at a quantity: units, then range. */
  static String allowed(Key key) {
    String units = Quantity.allowed(key.dimensions());
    return key.range().isEmpty() ? units : units + "; " + key.range();
  }
}
