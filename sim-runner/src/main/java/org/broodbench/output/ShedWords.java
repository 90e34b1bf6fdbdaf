package org.broodbench.output;

/** Shed levels in a word or two. */
final class ShedWords {
  private static final String[] WORDS = {
    "full", "set-back", "survival", "heat shed", "fan shed", "standby"
  };

  private ShedWords() {}

  static String level(int level) {
    return WORDS[level];
  }
}
