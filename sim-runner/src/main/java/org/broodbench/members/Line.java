package org.broodbench.members;

import java.io.IOException;

/** A connection to a member over which questions are put; several threads may ask at once. */
interface Line extends AutoCloseable {
  /**
   * The answer to a question.
   *
   * @throws IOException where the member is gone
   */
  byte[] ask(byte[] question) throws IOException;

  @Override
  void close();
}
