package org.broodbench.controller;

/**
 * A part of the core that owns state: it can be put to power-up, written out and read back. A part
 * that was just built has to be put to power-up before its first step.
 */
interface Part {
  /** Puts the power-up state. */
  void reset();

  /** Writes every word of state, in a fixed order. */
  void save(Words out);

  /** Reads what {@link #save} wrote; a word out of its range marks the words as bad. */
  void restore(Words in);
}
