package org.broodbench.audit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Gathers findings; several causes of one id become one finding with the weight of the worst. */
final class Findings {
  private final Map<String, Finding> byId = new LinkedHashMap<>();

  void add(
      String id,
      Severity severity,
      String title,
      String arithmetic,
      String advice,
      List<String> set,
      String source) {
    add(new Finding(id, severity, title, arithmetic, advice, set, source));
  }

  private void add(Finding f) {
    byId.merge(f.id(), f, Findings::both);
  }

  private static Finding both(Finding a, Finding b) {
    Set<String> set = new LinkedHashSet<>(a.set());
    set.addAll(b.set());
    boolean firstWorse = a.severity().compareTo(b.severity()) <= 0;
    return new Finding(
        a.id(),
        firstWorse ? a.severity() : b.severity(),
        firstWorse ? a.title() : b.title(),
        joined(a.arithmetic(), ". Also: ", b.arithmetic()),
        joined(a.advice(), "; ", b.advice()),
        List.copyOf(set),
        joined(a.source(), "; ", b.source()));
  }

  /** Two texts in one; the second only where the first does not say it already. */
  private static String joined(String a, String by, String b) {
    return a.contains(b) ? a : a.replaceAll("\\.$", "") + by + b;
  }

  /** Stops first, then warnings, then notes; within each in the order of the checks. */
  List<Finding> sorted() {
    List<Finding> all = new ArrayList<>(byId.values());
    all.sort(Comparator.comparing(Finding::severity));
    return all;
  }
}
