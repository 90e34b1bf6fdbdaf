package org.broodbench.rig;

import java.util.List;
import java.util.stream.Collectors;

/**
 * What parts may be bought, for sizing.
 *
 * @param lossOfLoadH most hours with the heat shed for want of charge in a season, on average
 * @param reliability share of the seasons that must meet every requirement, 0 to 1
 * @param currency code of all prices
 * @param parts what is chosen, each from its list
 */
public record SizeSpec(double lossOfLoadH, double reliability, String currency, List<Part> parts) {
  /** Copies the list. */
  public SizeSpec {
    parts = List.copyOf(parts);
  }

  /**
   * One part.
   *
   * @param name what it is
   * @param choices at least one
   */
  public record Part(String name, List<Choice> choices) {
    /** Copies the list. */
    public Part {
      choices = List.copyOf(choices);
    }
  }

  /**
   * One thing that can be bought.
   *
   * @param settings {@code KEY=VALUE} texts that build it in
   * @param price in the currency
   * @param massKg mass, kg
   * @param kind what sets it apart from other things of its part; only within one kind is one thing
   *     stronger than another
   * @param strength within its kind
   */
  public record Choice(
      List<String> settings, double price, double massKg, String kind, double strength) {
    /** Copies the list. */
    public Choice {
      settings = List.copyOf(settings);
    }

    /** What is built in, without the keys. */
    public String label() {
      return settings.stream()
          .map(s -> s.substring(s.indexOf('=') + 1).strip())
          .collect(Collectors.joining(" "));
    }

    /** Whether the other is of the same kind and at least as strong. */
    public boolean atMost(Choice other) {
      return kind.equals(other.kind) && strength <= other.strength;
    }
  }
}
