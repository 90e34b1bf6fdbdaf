package org.broodbench.firmware;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;

/** Where the lines go: a process or a serial port. */
public interface Transport extends AutoCloseable {
  /** What the firmware sends. */
  InputStream in();

  /** What the firmware gets. */
  OutputStream out();

  /** Loses no bytes, so that lines may be sent ahead. */
  boolean reliable();

  /**
   * How it ended, in words, once {@link #in} has ended; what it said on standard error included.
   */
  String ended();

  /** Whether its end means that it never began. */
  boolean neverBegan();

  /** Ends it, with whatever it started. */
  @Override
  void close();

  /** Opens a transport, as often as needed. */
  interface Opener {
    /**
     * Starts or opens it.
     *
     * @throws IOException where it cannot be started or opened
     */
    Transport open() throws IOException;
  }
}
