package org.broodbench.controller;

/** A cursor over an array of state words, used for writing state out and reading it back. */
final class Words {
  private int[] words = new int[0];
  private int at;
  private boolean bad;

  /** Points the cursor at {@code first} of {@code array}. */
  void open(int[] array, int first) {
    words = array;
    at = first;
    bad = false;
  }

  /** Index of the next word. */
  int position() {
    return at;
  }

  /** Whether a word was missing or out of its range. */
  boolean bad() {
    return bad;
  }

  void put(int word) {
    if (at < words.length) {
      words[at] = word;
    }
    at++;
  }

  void put(boolean flag) {
    put(flag ? 1 : 0);
  }

  /** The next word, which has to lie from {@code low} to {@code high}. */
  int take(int low, int high) {
    int word = at < words.length ? words[at] : 0;
    if (at >= words.length || word < low || word > high) {
      bad = true;
      word = low;
    }
    at++;
    return word;
  }

  /** The next word as a duration of at least zero. */
  int takeMillis() {
    return take(0, Integer.MAX_VALUE);
  }

  boolean takeFlag() {
    return take(0, 1) == 1;
  }
}
