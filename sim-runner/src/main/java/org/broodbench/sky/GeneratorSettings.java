package org.broodbench.sky;

import java.util.List;

/**
 * What weather to invent.
 *
 * @param seed equal seeds give equal weather
 * @param place the normals belong to it
 * @param normals usual weather of the place
 * @param firstEpochDay first UTC day, days since 1970-01-01
 * @param days how many
 * @param spells times of cold, dark weather put on top of chance
 * @param stress how much harder than usual
 */
public record GeneratorSettings(
    long seed,
    Place place,
    MonthlyNormals normals,
    long firstEpochDay,
    int days,
    List<Spell> spells,
    Stress stress) {

  /**
   * A run of days with a cold low overhead.
   *
   * @param fromDay counted from the first day, 0
   * @param days how many
   * @param colderByK by how much its days are colder than usual
   */
  public record Spell(int fromDay, int days, double colderByK) {}

  /**
   * A harder version of the same weather: the same draws, shifted.
   *
   * @param colderByK off every temperature
   * @param cloudierBy share of the clearness that is taken away, 0 to 0.9
   * @param longerSpellDays added to every spell
   */
  public record Stress(double colderByK, double cloudierBy, int longerSpellDays) {
    /** As usual. */
    public static final Stress NONE = new Stress(0, 0, 0);

    /** Refuses values out of range. */
    public Stress {
      if (!(cloudierBy >= 0 && cloudierBy <= 0.9) || longerSpellDays < 0) {
        throw new IllegalArgumentException("cloudier by 0 to 0.9, spells longer by 0 or more days");
      }
    }
  }

  /** Refuses an empty season. */
  public GeneratorSettings {
    spells = List.copyOf(spells);
    if (days < 1 || days > 40000) {
      throw new IllegalArgumentException("1 to 40000 days, not " + days);
    }
  }

  /**
   * The weather of the demonstration: the invented upland valley at 47 N 11 E, 900 m, with one cold
   * and dark spell of four days that begins on the fifth day.
   */
  public static GeneratorSettings uplandSpring(long seed, long firstEpochDay, int days) {
    return new GeneratorSettings(
        seed,
        new Place(47, 11, 900),
        MonthlyNormals.UPLAND_VALLEY,
        firstEpochDay,
        days,
        List.of(new Spell(4, 4, 6)),
        Stress.NONE);
  }
}
