package org.broodbench.input.weather;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;

/**
 * The first lines of a file, to tell its layout by.
 *
 * @param lines without line ends; the last may be cut
 */
record Head(List<String> lines) {
  static Head of(byte[] bytes) {
    int start = bytes.length >= 3 && bytes[0] == (byte) 0xEF && bytes[1] == (byte) 0xBB ? 3 : 0;
    String text =
        new String(bytes, start, bytes.length - start, StandardCharsets.ISO_8859_1)
            .replace("\0", "");
    return new Head(Arrays.asList(text.split("\r\n|\r|\n")));
  }

  /** The line of this number from 0, empty where there is none. */
  String line(int i) {
    return i < lines.size() ? lines.get(i) : "";
  }

  /** The first line that is not blank. */
  String firstText() {
    return lines.stream().filter(l -> !l.isBlank()).findFirst().orElse("");
  }

  boolean anyStartsWith(String start) {
    return lines.stream().anyMatch(l -> l.startsWith(start));
  }
}
