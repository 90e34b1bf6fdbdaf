package org.broodbench.study;

import java.util.List;

/** Who carries out the pieces of a study: threads of this machine, or other machines as well. */
public interface Crew extends AutoCloseable {
  /**
   * Has pieces carried out.
   *
   * @param names of the pieces
   * @param how carries out a piece on this machine
   * @param taker hears every piece once, from one thread alone, in whatever order they end
   * @return whether all of them were carried out; false when the study was stopped
   */
  boolean run(List<String> names, Pieces how, Parallel.Taker<String> taker);

  /** Nobody is needed any more. */
  @Override
  default void close() {}
}
