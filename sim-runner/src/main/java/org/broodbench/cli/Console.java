package org.broodbench.cli;

import java.io.PrintStream;

/** The two streams: results on one, messages on the other. */
record Console(PrintStream out, PrintStream err) {}
