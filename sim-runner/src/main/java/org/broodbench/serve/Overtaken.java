package org.broodbench.serve;

/** Ends work whose result nobody waits for any more, because a later change has overtaken it. */
final class Overtaken extends RuntimeException {
  private static final long serialVersionUID = 1L;

  Overtaken() {
    super("overtaken by a later change", null, false, false);
  }
}
