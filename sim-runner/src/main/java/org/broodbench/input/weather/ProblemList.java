package org.broodbench.input.weather;

import java.util.ArrayList;
import java.util.List;
import org.broodbench.input.BadInput;
import org.broodbench.input.Problem;

/** Gathers what is wrong with one file and stops the reading when the list is long enough. */
final class ProblemList {
  /** More would not be read by anyone. */
  static final int MOST = 50;

  private final String file;
  private final List<Problem> problems = new ArrayList<>();

  ProblemList(String file) {
    this.file = file;
  }

  String file() {
    return file;
  }

  /** Adds one; throws all of them when the list is full. */
  void add(int line, int column, String key, String found, String allowed, String hint) {
    problems.add(new Problem(file, line, column, key, shorten(found), allowed, hint));
    if (problems.size() >= MOST) {
      throw new BadInput(problems);
    }
  }

  /** Adds one and throws: nothing further can be read. */
  BadInput fatal(int line, int column, String key, String found, String allowed, String hint) {
    problems.add(new Problem(file, line, column, key, shorten(found), allowed, hint));
    return new BadInput(problems);
  }

  void throwIfAny() {
    if (!problems.isEmpty()) {
      throw new BadInput(problems);
    }
  }

  boolean isEmpty() {
    return problems.isEmpty();
  }

  /** Found text may be a whole binary line: keep the beginning and only printable characters. */
  private static String shorten(String text) {
    StringBuilder b = new StringBuilder();
    for (int i = 0; i < text.length() && b.length() < 60; i++) {
      char c = text.charAt(i);
      b.append(c < ' ' || c == 127 ? '?' : c);
    }
    return text.length() > 60 ? b + "..." : b.toString();
  }
}
