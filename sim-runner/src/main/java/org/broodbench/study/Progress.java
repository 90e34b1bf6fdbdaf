package org.broodbench.study;

/** Hears how far a study has come. */
public interface Progress {
  /** Nobody listens. */
  Progress NONE = (done, of) -> {};

  /** So many of so many pieces are done. */
  void at(int done, int of);
}
