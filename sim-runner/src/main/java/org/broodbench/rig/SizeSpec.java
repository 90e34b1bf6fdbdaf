package org.broodbench.rig;

import java.util.List;

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
   * @param choices from weak to strong, at least one
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
   */
  public record Choice(List<String> settings, double price, double massKg) {
    /** Copies the list. */
    public Choice {
      settings = List.copyOf(settings);
    }

    /** What is built in, in short. */
    public String label() {
      return String.join(", ", settings);
    }
  }
}
