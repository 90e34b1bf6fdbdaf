package org.broodbench.input.weather;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;

/** Calendar sums on whole numbers; no time zone but the stated offset ever enters. */
public final class Stamps {
  /** Not a time. */
  public static final long NONE = Long.MIN_VALUE;

  private Stamps() {}

  /** Days since 1970-01-01, or NONE where there is no such date. */
  static long epochDay(int year, int month, int day) {
    if (year < 1700 || year > 2500 || month < 1 || month > 12 || day < 1 || day > 31) {
      return NONE;
    }
    if (day > 28) {
      try {
        return LocalDate.of(year, month, day).toEpochDay();
      } catch (DateTimeException e) {
        return NONE;
      }
    }
    // days from civil, H. Hinnant's public-domain arithmetic
    int y = month <= 2 ? year - 1 : year;
    int era = Math.floorDiv(y, 400);
    int yoe = y - era * 400;
    int doy = (153 * (month + (month > 2 ? -3 : 9)) + 2) / 5 + day - 1;
    int doe = yoe * 365 + yoe / 4 - yoe / 100 + doy;
    return era * 146097L + doe - 719468;
  }

  /** Seconds since 1970-01-01T00:00:00, or NONE; the hour may be 24. */
  static long epochS(int year, int month, int day, int hour, int minute, int second) {
    long days = epochDay(year, month, day);
    if (days == NONE
        || hour < 0
        || hour > 24
        || minute < 0
        || minute > 60
        || second < 0
        || second > 59) {
      return NONE;
    }
    return days * 86400 + hour * 3600L + minute * 60L + second;
  }

  /** A date as YYYYMMDD, at midnight; NONE where it is none. */
  static long date8(Fields f, int field) {
    if (f.size(field) != 8) {
      return NONE;
    }
    return epochS(f.digits(field, 0, 4), f.digits(field, 4, 2), f.digits(field, 6, 2), 0, 0, 0);
  }

  /** An ISO 8601 instant that ends in Z, seconds optional; NONE where it is none. */
  static long isoUtc(Fields f, int field) {
    int n = f.size(field);
    if (n < 17 || f.at(field, n - 1) != 'Z') {
      return NONE;
    }
    return isoLocal(f, field, n - 1);
  }

  /** An ISO 8601 date and time of this many characters without a zone. */
  static long isoLocal(Fields f, int field, int n) {
    boolean shape =
        (n == 16 || n == 19)
            && f.at(field, 4) == '-'
            && f.at(field, 7) == '-'
            && (f.at(field, 10) == 'T' || f.at(field, 10) == ' ')
            && f.at(field, 13) == ':'
            && (n == 16 || f.at(field, 16) == ':');
    if (!shape) {
      return NONE;
    }
    int hour = f.digits(field, 11, 2);
    int minute = f.digits(field, 14, 2);
    int second = n == 19 ? f.digits(field, 17, 2) : 0;
    if (hour > 23 || minute > 59) {
      return NONE;
    }
    return epochS(
        f.digits(field, 0, 4), f.digits(field, 5, 2), f.digits(field, 8, 2), hour, minute, second);
  }

  /**
   * Date and time as the numbers in a text, in this order: "ymdhms", "dmyhm" and the like. What is
   * between the numbers does not matter, but a sign or a zone after them does: only {@code Z} may
   * follow.
   */
  public static long byOrder(String text, String order) {
    int[] part = {0, 1, 1, 0, 0, 0};
    int i = 0;
    int k = 0;
    while (i < text.length() && k < order.length()) {
      if (!isDigit(text.charAt(i))) {
        i++;
        continue;
      }
      int slot = "ymdhns".indexOf(order.charAt(k));
      // numbers without marks between them have fixed widths
      int widest = slot == 0 ? 4 : 2;
      int value = 0;
      int width = 0;
      while (i < text.length() && width < widest && isDigit(text.charAt(i))) {
        value = 10 * value + (text.charAt(i) - '0');
        i++;
        width++;
      }
      part[slot] = value;
      k++;
    }
    String rest = text.substring(i);
    boolean complete = k == order.length() || k >= 3 && rest.isEmpty();
    if (!complete || !rest.matches("[:.0]*Z?")) {
      return NONE;
    }
    return epochS(part[0], part[1], part[2], part[3], part[4], part[5]);
  }

  private static boolean isDigit(char c) {
    return c >= '0' && c <= '9';
  }

  /** For messages. */
  static String text(long epochS) {
    return Instant.ofEpochSecond(epochS).toString();
  }
}
