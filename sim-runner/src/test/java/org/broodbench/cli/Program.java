package org.broodbench.cli;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;

/** Runs the program as a user does, and keeps what it printed. */
final class Program {
  final int code;
  final String out;
  final String err;

  private Program(int code, String out, String err) {
    this.code = code;
    this.out = out;
    this.err = err;
  }

  /** A process of its own that ended. */
  static Program ended(int code, String err) {
    return new Program(code, "", err);
  }

  static Program run(String... args) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    int code =
        Main.execute(
            new PrintStream(out, true, StandardCharsets.UTF_8),
            new PrintStream(err, true, StandardCharsets.UTF_8),
            args);
    return new Program(
        code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
  }
}
