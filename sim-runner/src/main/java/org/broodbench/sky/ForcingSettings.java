package org.broodbench.sky;

/**
 * How a weather record becomes what the plant feels.
 *
 * @param transposition model of the diffuse sky
 * @param albedo of bare or green ground, 0 to 1
 * @param snowAlbedo of ground under snow
 * @param snow where snow comes from
 * @param longWave formula of the clear sky's emissivity
 * @param linkeTurbidity haze of the clear sky that the record is compared with to tell clouds
 * @param roughnessM roughness length of the ground around, m
 * @param hiveHeightM height for which the wind is given, m
 * @param shelterFactor further factor on the wind: hedges, walls
 * @param defaultWindMS wind where the record has none, m/s at the series' wind height
 */
public record ForcingSettings(
    Transposition.Model transposition,
    double albedo,
    double snowAlbedo,
    SnowRule snow,
    LongWave.Model longWave,
    double linkeTurbidity,
    double roughnessM,
    double hiveHeightM,
    double shelterFactor,
    double defaultWindMS) {

  /** Whether the ground is white. */
  public enum SnowRule {
    /** Never. */
    NONE,
    /** Throughout. */
    ALWAYS,
    /** Precipitation in frost lies until degree days have melted it, see {@link SnowCover}. */
    FROM_RECORD
  }

  /**
   * Hay-Davies; albedo 0.2 (grass, handbook value), snow 0.7 (handbook range 0.6 to 0.8), taken
   * from the record; Clark-Allen; Linke turbidity 3 (common in the lowlands, own choice); roughness
   * 0.03 m (short grass, handbook value); hive at 1 m, open; 2 m/s where there is no wind (the
   * default of FAO Irrigation and Drainage Paper 56, chapter 4).
   */
  public static final ForcingSettings DEFAULT =
      new ForcingSettings(
          Transposition.Model.HAY_DAVIES,
          0.2,
          0.7,
          SnowRule.FROM_RECORD,
          LongWave.Model.CLARK_ALLEN,
          3,
          0.03,
          1,
          1,
          2);

  /** Refuses values out of range. */
  public ForcingSettings {
    check(albedo >= 0 && albedo <= 1, "albedo", albedo);
    check(snowAlbedo >= 0 && snowAlbedo <= 1, "snow albedo", snowAlbedo);
    check(linkeTurbidity >= 1 && linkeTurbidity <= 10, "Linke turbidity", linkeTurbidity);
    check(roughnessM > 0 && roughnessM < hiveHeightM, "roughness length", roughnessM);
    check(hiveHeightM <= 20, "hive height", hiveHeightM);
    check(shelterFactor >= 0 && shelterFactor <= 1, "shelter factor", shelterFactor);
    check(defaultWindMS >= 0 && defaultWindMS <= 50, "default wind", defaultWindMS);
  }

  private static void check(boolean good, String what, double value) {
    if (!good) {
      throw new IllegalArgumentException(what + " out of range: " + value);
    }
  }
}
