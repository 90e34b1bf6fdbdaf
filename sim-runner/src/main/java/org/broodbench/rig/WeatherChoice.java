package org.broodbench.rig;

import java.util.List;
import java.util.Optional;
import org.broodbench.sky.Climate;
import org.broodbench.sky.GeneratorSettings;
import org.broodbench.sky.Horizon;
import org.broodbench.sky.Place;
import org.broodbench.sky.Transposition;

/**
 * Where the weather of a run comes from.
 *
 * @param file weather file relative to the scenario; empty means that the generator makes it
 * @param climate what the generator makes it from
 * @param spell cold, dark days that the generator puts on top
 * @param generatorSeed seed of the generated weather
 * @param longestGapHours longest gap that is filled, hours
 * @param bridgeLongGaps whether longer gaps are bridged by days drawn from the same season of the
 *     record
 * @param harder what is made harder about the weather, whatever its source
 * @param mapping how to read the file when it is a table of no known layout
 * @param groundAlbedo share of sunlight that the ground sends back, 0 to 1
 * @param horizon what stands around hive and panel
 * @param diffuseSky how diffuse light is spread over the sky
 */
public record WeatherChoice(
    String file,
    Climate climate,
    GeneratorSettings.Spell spell,
    long generatorSeed,
    double longestGapHours,
    boolean bridgeLongGaps,
    GeneratorSettings.Stress harder,
    Optional<CsvMapping> mapping,
    double groundAlbedo,
    Horizon horizon,
    Transposition.Model diffuseSky) {
  /** The cold spell of the demonstration: four days from the fifth, 6 K colder than usual. */
  public static final GeneratorSettings.Spell USUAL_SPELL = new GeneratorSettings.Spell(4, 4, 6);

  /** The upland climate with its usual spell, or a file; in an open field. */
  public WeatherChoice(
      String file, long generatorSeed, double longestGapHours, double groundAlbedo) {
    this(
        file,
        Climate.UPLAND,
        USUAL_SPELL,
        generatorSeed,
        longestGapHours,
        false,
        GeneratorSettings.Stress.NONE,
        Optional.empty(),
        groundAlbedo,
        Horizon.OPEN,
        Transposition.Model.HAY_DAVIES);
  }

  /** Whether the generator makes the weather. */
  public boolean generated() {
    return file.isEmpty();
  }

  /** What the generator is told for a place and a window. */
  public GeneratorSettings generator(Place place, Window window) {
    boolean none = spell.days() == 0 || spell.colderByK() == 0;
    return new GeneratorSettings(
        generatorSeed,
        place,
        climate.normals(),
        Math.floorDiv(window.fromEpochS(), 86_400L),
        window.days(),
        none ? List.of() : List.of(spell),
        GeneratorSettings.Stress.NONE);
  }
}
