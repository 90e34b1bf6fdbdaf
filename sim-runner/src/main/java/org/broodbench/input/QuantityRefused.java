package org.broodbench.input;

/** A text that is not a quantity of the wanted dimension, with what may stand there and advice. */
final class QuantityRefused extends Exception {
  private static final long serialVersionUID = 1L;

  private final String allowed;
  private final String hint;

  QuantityRefused(String allowed, String hint) {
    super(hint.isEmpty() ? allowed : hint);
    this.allowed = allowed;
    this.hint = hint;
  }

  String allowed() {
    return allowed;
  }

  String hint() {
    return hint;
  }
}
