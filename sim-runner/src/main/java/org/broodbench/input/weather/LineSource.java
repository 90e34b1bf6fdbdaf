package org.broodbench.input.weather;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/**
 * Lines of a text file as bytes, streamed. A line ends at LF, CR LF or a single CR; bytes of value
 * 0 are left out (loggers pad with them); a UTF-8 byte-order mark is skipped.
 */
final class LineSource {
  /** Longest line of any layout is below 10 kB. */
  private static final int LONGEST = 1 << 20;

  private final InputStream in;
  private final ProblemList problems;
  private final byte[] buffer = new byte[1 << 16];
  private int position;
  private int limit;
  private boolean pendingCr;

  private byte[] line = new byte[512];
  private int length;
  private int number;

  LineSource(InputStream in, ProblemList problems) {
    this.in = in;
    this.problems = problems;
  }

  /** Moves to the next line; false at the end of the file. */
  boolean next() {
    length = 0;
    boolean any = false;
    while (true) {
      if (position == limit && !fill()) {
        if (any) {
          number++;
          stripMark();
        }
        return any;
      }
      byte b = buffer[position++];
      if (pendingCr) {
        pendingCr = false;
        if (b == '\n') {
          continue;
        }
      }
      any = true;
      if (b == '\n' || b == '\r') {
        pendingCr = b == '\r';
        number++;
        stripMark();
        return true;
      }
      if (b != 0) {
        if (length == line.length) {
          if (length >= LONGEST) {
            throw problems.fatal(
                number + 1, 0, "", "a line of over a million characters", "text in lines", "");
          }
          line = Arrays.copyOf(line, 2 * length);
        }
        line[length++] = b;
      }
    }
  }

  private boolean fill() {
    try {
      position = 0;
      limit = Math.max(0, in.read(buffer, 0, buffer.length));
      return limit > 0;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void stripMark() {
    if (number == 1
        && length >= 3
        && line[0] == (byte) 0xEF
        && line[1] == (byte) 0xBB
        && line[2] == (byte) 0xBF) {
      length -= 3;
      System.arraycopy(line, 3, line, 0, length);
    }
  }

  /** Number of the current line; the first is 1. */
  int number() {
    return number;
  }

  byte[] bytes() {
    return line;
  }

  int length() {
    return length;
  }

  boolean isBlank() {
    for (int i = 0; i < length; i++) {
      if (line[i] != ' ' && line[i] != '\t') {
        return false;
      }
    }
    return true;
  }

  String text() {
    return new String(line, 0, length, StandardCharsets.ISO_8859_1);
  }

  /** The line as UTF-8, for free text. */
  String utf8() {
    return new String(line, 0, length, StandardCharsets.UTF_8);
  }
}
