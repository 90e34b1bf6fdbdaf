package org.broodbench.input;

import java.util.List;

/** Renders problems for people: one line each, advice indented below, a count at the end. */
public final class ProblemText {
  private ProblemText() {}

  /** All problems and the closing line, each line ended. */
  public static String render(List<Problem> problems) {
    StringBuilder out = new StringBuilder();
    for (Problem problem : problems) {
      out.append(render(problem));
    }
    out.append(problems.size())
        .append(problems.size() == 1 ? " problem" : " problems")
        .append("; nothing was run.\n");
    return out.toString();
  }

  /** One problem, each line ended. */
  public static String render(Problem problem) {
    StringBuilder out = new StringBuilder(problem.file()).append(':');
    if (problem.line() > 0) {
      out.append(problem.line()).append(':');
      if (problem.column() > 0) {
        out.append(problem.column()).append(':');
      }
    }
    out.append(' ');
    if (!problem.key().isEmpty()) {
      out.append(problem.key()).append(": ");
    }
    if (problem.allowed().isEmpty()) {
      out.append(problem.found());
      if (!problem.hint().isEmpty()) {
        out.append("; ").append(problem.hint());
      }
      return out.append('\n').toString();
    }
    out.append("found ").append(problem.found()).append(", allowed ").append(problem.allowed());
    if (!problem.hint().isEmpty()) {
      out.append("\n    ").append(problem.hint());
    }
    return out.append('\n').toString();
  }
}
