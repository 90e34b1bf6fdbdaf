package org.broodbench.controller;

import java.util.List;

/** Settings that no controller may be built from; holds every problem, not only the first. */
public final class IllegalSettings extends IllegalArgumentException {
  private static final long serialVersionUID = 1L;

  private final transient List<SettingProblem> problems;

  IllegalSettings(List<SettingProblem> problems) {
    super(text(problems));
    this.problems = List.copyOf(problems);
  }

  /** {@return every problem, in the order of the settings table} */
  public List<SettingProblem> problems() {
    return problems;
  }

  private static String text(List<SettingProblem> problems) {
    StringBuilder text = new StringBuilder();
    for (SettingProblem problem : problems) {
      if (text.length() > 0) {
        text.append('\n');
      }
      text.append(problem);
    }
    return text.toString();
  }
}
