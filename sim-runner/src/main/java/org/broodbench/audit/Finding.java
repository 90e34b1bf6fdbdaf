package org.broodbench.audit;

import java.util.List;

/**
 * Something about a rig that the arithmetic speaks against.
 *
 * @param id its name, the same in every version
 * @param severity how much it weighs
 * @param title in a line
 * @param arithmetic how it was found, with the numbers put in
 * @param advice what to do, in words
 * @param set settings that make it go, each as "key=value"
 * @param source where the limit comes from, or "common practice, no source"
 */
public record Finding(
    String id,
    Severity severity,
    String title,
    String arithmetic,
    String advice,
    List<String> set,
    String source) {
  /** What is said of limits that everybody uses and nobody wrote. */
  public static final String PRACTICE = "common practice, no source";

  /** Copies the list. */
  public Finding {
    set = List.copyOf(set);
    if (set.isEmpty()) {
      throw new IllegalArgumentException("a finding without a cure: " + id);
    }
  }

  /** What to do, and with which settings: as they are typed behind a verb. */
  public String remedy() {
    StringBuilder text = new StringBuilder(advice).append(':');
    for (String s : set) {
      int equals = s.indexOf('=');
      String value = s.substring(equals + 1);
      String quote = value.indexOf(' ') < 0 ? "" : "\"";
      text.append(" --set ").append(s, 0, equals + 1).append(quote).append(value).append(quote);
    }
    return text.toString();
  }
}
