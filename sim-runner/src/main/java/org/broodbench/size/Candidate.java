package org.broodbench.size;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.broodbench.rig.SizeSpec;

/**
 * One choice of every part.
 *
 * @param spec the parts
 * @param at which choice of each part, from 0
 */
record Candidate(SizeSpec spec, int[] at) {
  /** Of equal price the lighter first. */
  static final Comparator<Candidate> CHEAPEST =
      Comparator.comparingDouble(Candidate::price)
          .thenComparingDouble(Candidate::massKg)
          .thenComparing(Candidate::at, Arrays::compare);

  /** All of them, cheapest first. */
  static List<Candidate> all(SizeSpec spec) {
    List<Candidate> all = new ArrayList<>();
    int[] at = new int[spec.parts().size()];
    boolean more = true;
    while (more) {
      all.add(new Candidate(spec, at.clone()));
      more = false;
      for (int p = at.length - 1; p >= 0 && !more; p--) {
        at[p]++;
        more = at[p] < spec.parts().get(p).choices().size();
        if (!more) {
          at[p] = 0;
        }
      }
    }
    all.sort(CHEAPEST);
    return all;
  }

  double price() {
    double sum = 0;
    for (int p = 0; p < at.length; p++) {
      sum += choice(p).price();
    }
    return sum;
  }

  double massKg() {
    double sum = 0;
    for (int p = 0; p < at.length; p++) {
      sum += choice(p).massKg();
    }
    return sum;
  }

  SizeSpec.Choice choice(int part) {
    return spec.parts().get(part).choices().get(at[part]);
  }

  List<String> settings() {
    List<String> all = new ArrayList<>();
    for (int p = 0; p < at.length; p++) {
      all.addAll(choice(p).settings());
    }
    return all;
  }

  /** Whether every part of it is of the kind of the other's and none is stronger. */
  boolean atMost(Candidate other) {
    for (int p = 0; p < at.length; p++) {
      if (at[p] != other.at[p] && !choice(p).atMost(other.choice(p))) {
        return false;
      }
    }
    return true;
  }

  /** The same with another choice of one part. */
  Candidate with(int part, int choice) {
    int[] other = at.clone();
    other[part] = choice;
    return new Candidate(spec, other);
  }

  String key() {
    return Arrays.toString(at);
  }

  /** The candidate of a key; refuses what is none. */
  static Candidate of(SizeSpec spec, String key) {
    int[] at =
        Arrays.stream(key.replaceAll("[\\[\\] ]", "").split(","))
            .mapToInt(Integer::parseInt)
            .toArray();
    if (at.length != spec.parts().size()) {
      throw new IllegalArgumentException("no candidate is called " + key);
    }
    return new Candidate(spec, at);
  }
}
