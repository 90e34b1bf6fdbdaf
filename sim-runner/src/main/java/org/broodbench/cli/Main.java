package org.broodbench.cli;

/** Entry point of the command line. */
public final class Main {
  private Main() {}

  /** Runs one verb and ends the process with its exit code. */
  public static void main(String[] args) {
    System.exit(0);
  }
}
