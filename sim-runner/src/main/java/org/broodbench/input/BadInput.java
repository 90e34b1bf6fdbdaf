package org.broodbench.input;

import java.util.List;

/**
 * Input that cannot be used: carries every problem found, in the order of the file. The program
 * ends with exit code 2.
 */
public final class BadInput extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final transient List<Problem> problems;

  /** Holds a copy of the problems; there is at least one. */
  public BadInput(List<Problem> problems) {
    super(ProblemText.render(problems));
    this.problems = List.copyOf(problems);
  }

  /** The problems in the order of the file. */
  public List<Problem> problems() {
    return problems;
  }
}
