package org.broodbench.input.weather;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/**
 * Splits a line into fields without making objects. Fields are parted by one character, or by runs
 * of blanks; blanks around a field and double quotes around it are not part of it.
 */
final class Fields implements Row {
  /** Delimiter that stands for runs of blanks and tabs. */
  static final char BLANKS = ' ';

  private static final double[] TENS = {
    1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17,
    1e18, 1e19, 1e20, 1e21, 1e22
  };

  private final char delimiter;
  private byte[] bytes = new byte[0];
  private int[] from = new int[64];
  private int[] to = new int[64];
  private int count;

  Fields(char delimiter) {
    this.delimiter = delimiter;
  }

  /** Takes the current line of the source. */
  void split(LineSource line) {
    bytes = line.bytes();
    count = 0;
    int end = line.length();
    if (delimiter == BLANKS) {
      splitBlanks(end);
      return;
    }
    int i = 0;
    while (i <= end) {
      int start = i;
      boolean quoted = false;
      while (i < end && (quoted || bytes[i] != delimiter)) {
        if (bytes[i] == '"') {
          quoted = !quoted;
        }
        i++;
      }
      add(start, i);
      i++;
    }
  }

  private void splitBlanks(int end) {
    int i = 0;
    while (i < end) {
      while (i < end && isBlank(bytes[i])) {
        i++;
      }
      int start = i;
      while (i < end && !isBlank(bytes[i])) {
        i++;
      }
      if (i > start) {
        add(start, i);
      }
    }
  }

  private void add(int start, int end) {
    int a = start;
    int b = end;
    while (a < b && isBlank(bytes[a])) {
      a++;
    }
    while (b > a && isBlank(bytes[b - 1])) {
      b--;
    }
    if (b - a >= 2 && bytes[a] == '"' && bytes[b - 1] == '"') {
      a++;
      b--;
    }
    if (count == from.length) {
      from = Arrays.copyOf(from, 2 * count);
      to = Arrays.copyOf(to, 2 * count);
    }
    from[count] = a;
    to[count] = b;
    count++;
  }

  private static boolean isBlank(byte b) {
    return b == ' ' || b == '\t';
  }

  @Override
  public int count() {
    return count;
  }

  @Override
  public int column(int field) {
    return from[field] + 1;
  }

  @Override
  public boolean isEmpty(int field) {
    return from[field] == to[field];
  }

  @Override
  public String text(int field) {
    return new String(bytes, from[field], to[field] - from[field], StandardCharsets.UTF_8);
  }

  @Override
  public boolean is(int field, String text) {
    if (to[field] - from[field] != text.length()) {
      return false;
    }
    for (int i = 0; i < text.length(); i++) {
      if (bytes[from[field] + i] != text.charAt(i)) {
        return false;
      }
    }
    return true;
  }

  int size(int field) {
    return to[field] - from[field];
  }

  byte at(int field, int offset) {
    return bytes[from[field] + offset];
  }

  /** Digits from {@code offset} on, {@code size} of them; -1 where there is anything else. */
  int digits(int field, int offset, int size) {
    if (offset + size > to[field] - from[field] || size > 9) {
      return -1;
    }
    int value = 0;
    for (int i = 0; i < size; i++) {
      int d = bytes[from[field] + offset + i] - '0';
      if (d < 0 || d > 9) {
        return -1;
      }
      value = 10 * value + d;
    }
    return value;
  }

  /** A whole number without sign; -1 where the field is anything else. */
  int whole(int field) {
    int size = size(field);
    return size == 0 ? -1 : digits(field, 0, size);
  }

  /** Exactly what {@code Double.parseDouble} gives, for decimal numbers alone. */
  @Override
  public double number(int field) {
    int i = from[field];
    int end = to[field];
    boolean negative = false;
    if (i < end && (bytes[i] == '-' || bytes[i] == '+')) {
      negative = bytes[i] == '-';
      i++;
    }
    long mantissa = 0;
    int digits = 0;
    int decimals = 0;
    boolean point = false;
    for (; i < end; i++) {
      byte b = bytes[i];
      if (b >= '0' && b <= '9') {
        mantissa = 10 * mantissa + (b - '0');
        digits++;
        decimals += point ? 1 : 0;
        if (digits > 17) {
          return slowNumber(field);
        }
      } else if (b == '.' && !point) {
        point = true;
      } else {
        return slowNumber(field);
      }
    }
    if (digits == 0) {
      return Double.NaN;
    }
    if (mantissa >= 1L << 53) {
      return slowNumber(field);
    }
    // both are exact doubles, so that one rounding is made, as in parseDouble
    double value = mantissa / TENS[decimals];
    return negative ? -value : value;
  }

  private double slowNumber(int field) {
    for (int i = from[field]; i < to[field]; i++) {
      byte b = bytes[i];
      boolean part =
          b >= '0' && b <= '9' || b == '.' || b == '-' || b == '+' || b == 'e' || b == 'E';
      if (!part) {
        return Double.NaN;
      }
    }
    try {
      return Double.parseDouble(text(field));
    } catch (NumberFormatException e) {
      return Double.NaN;
    }
  }
}
