package org.broodbench.controller;

/**
 * Writes the state of all parts as words and reads it back (rules N1 to N4): version, count, the
 * parts in order, a checksum.
 */
final class StateWords {
  /** Changes whenever the layout does. */
  private static final int VERSION = 0x42420001;

  private static final int CHECK_SEED = 0x5A17;

  private final Part[] parts;
  private final Words words = new Words();
  private final int count;

  StateWords(Part[] parts) {
    this.parts = parts;
    reset();
    words.open(new int[0], 0);
    write();
    count = words.position() + 1;
  }

  int count() {
    return count;
  }

  void save(int[] array) {
    if (array.length < count) {
      throw new IllegalArgumentException(
          "state words: found " + array.length + ", allowed at least " + count);
    }
    words.open(array, 0);
    write();
    array[count - 1] = check(array);
  }

  private void write() {
    words.put(VERSION);
    words.put(count);
    for (Part part : parts) {
      part.save(words);
    }
  }

  boolean restore(int[] array) {
    boolean good = array != null && array.length >= count && array[count - 1] == check(array);
    if (good) {
      words.open(array, 0);
      words.take(VERSION, VERSION);
      words.take(count, count);
      for (Part part : parts) {
        part.restore(words);
      }
      good = !words.bad();
    }
    if (!good) {
      reset();
    }
    return good;
  }

  private void reset() {
    for (Part part : parts) {
      part.reset();
    }
  }

  /** Rotate and add, in 32 wrapping bits. */
  private int check(int[] array) {
    int sum = CHECK_SEED;
    for (int i = 0; i < count - 1; i++) {
      sum = ((sum << 5) | (sum >>> 27)) + array[i];
    }
    return sum;
  }
}
