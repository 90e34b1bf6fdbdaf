package org.broodbench.cli;

import java.util.concurrent.Callable;

/** A verb of the command line; built with the console it writes to. */
abstract class Verb implements Callable<Integer> {
  private final Console console;

  Verb(Console console) {
    this.console = console;
  }

  final Console console() {
    return console;
  }
}
