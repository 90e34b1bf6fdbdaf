package org.broodbench.study;

import java.util.List;

/**
 * One change that a keeper could make.
 *
 * @param what in words, as an order: "Insulate with 50 mm all round instead of 20 mm"
 * @param settings the same as {@code KEY=VALUE} texts that go above the scenario's file
 */
public record Change(String what, List<String> settings) {
  /** Copies the list. */
  public Change {
    settings = List.copyOf(settings);
  }

  /** A change of some keys, each text {@code KEY=VALUE}. */
  static Change of(String what, String... settings) {
    return new Change(what, List.of(settings));
  }
}
