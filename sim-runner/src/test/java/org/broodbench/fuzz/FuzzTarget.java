package org.broodbench.fuzz;

import java.util.Locale;

/** What a coverage-guided fuzzer calls with bytes that it makes up; see the profile fuzz. */
public final class FuzzTarget {
  /** Names the reader. */
  static final String PROPERTY = "broodbench.fuzz.reader";

  private static final Reader READER =
      Reader.valueOf(System.getProperty(PROPERTY).toUpperCase(Locale.ROOT).replace('-', '_'));

  private FuzzTarget() {}

  /** One try. */
  public static void fuzzerTestOneInput(byte[] bytes) {
    READER.read(bytes);
  }
}
