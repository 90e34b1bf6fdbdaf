package org.broodbench.hive;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.broodbench.colony.ColonyHeat;
import org.broodbench.colony.ColonySpec;
import org.broodbench.matter.MoistAir;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Heat, water and gas of a colony against published figures, which stand beside each test. */
class ColonyValidationTest {

  private static ColonyHeat colony(double kg, double brood, double factor) {
    return new ColonyHeat(new ColonySpec(kg / 0.115e-3, 0.115, brood, 2, factor, 40, 0, false));
  }

  /** Core temperature at which the colony makes what it loses, from the warm side, °C. */
  private static double restC(ColonyHeat colony, double airC) {
    double low = airC;
    double high = 40;
    // the warmest crossing: step down from the warm side until heat exceeds loss
    double c = high;
    while (c > low) {
      colony.evaluate(c, airC);
      if (colony.heatW() >= colony.lossWK() * (c - airC)) {
        return c;
      }
      c -= 0.001;
    }
    return low;
  }

  private static double restWKg(double kg, double brood, double factor, double airC) {
    ColonyHeat colony = colony(kg, brood, factor);
    restC(colony, airC);
    return colony.heatW() / kg;
  }

  /**
   * E. E. Southwick, J. Comp. Physiol. B 156 (1985), abstract: oxygen use per mass ∝ M^−0.479, so
   * that ln P rises with ln M by 0.52, clusters of 0.1 to 1.2 kg at 2 °C.
   */
  @Test
  void heatRisesWithMassByThePublishedPower() {
    double[] masses = {0.1, 0.2, 0.3, 0.6, 1.0, 1.2};
    double sx = 0;
    double sy = 0;
    double sxx = 0;
    double sxy = 0;
    for (double kg : masses) {
      double x = StrictMath.log(kg);
      double y = StrictMath.log(kg * restWKg(kg, 0, 1, 2));
      sx += x;
      sy += y;
      sxx += x * x;
      sxy += x * y;
    }
    double n = masses.length;
    assertEquals(0.52, (n * sxy - sx * sy) / (n * sxx - sx * sx), 0.06);
  }

  /** The same paper's law: about 4.8 W/kg at 1 kg and 14 W/kg at 0.1 kg, 2 °C, no brood. */
  @ParameterizedTest
  @CsvSource({"1.0, 4.8, 0.7", "0.1, 14, 2.5"})
  void heatOfBroodlessClusters(double kg, double wPerKg, double within) {
    assertEquals(wPerKg, restWKg(kg, 0, 1, 2), within);
  }

  /** Published winter clusters: about 5 W/kg near 10 °C; 3.5 to 6 are taken as its range. */
  @Test
  void tightClusterAtTenDegrees() {
    double q = restWKg(1, 0, 1, 10);
    assertTrue(q >= 3.5 && q <= 6, "W/kg: " + q);
  }

  /** No published colony sustains more than 60 W/kg. */
  @Test
  void noColonyMakesMoreThanBeesCan() {
    List<String> beyond = new ArrayList<>();
    for (double airC = -20; airC <= 40; airC += 2) {
      for (double coreC = -20; coreC <= 45; coreC++) {
        for (double kg : new double[] {0.05, 0.3, 2}) {
          ColonyHeat c = colony(kg, 1, 2.85);
          c.evaluate(coreC, airC);
          if (!(c.heatW() / kg <= 60)) {
            beyond.add(String.format(Locale.ROOT, "%.2f kg %.0f/%.0f °C", kg, coreC, airC));
          }
        }
      }
    }
    assertTrue(beyond.isEmpty(), beyond.toString());
  }

  /** Resting bees, Thermochimica Acta 382 (2002) 221: Q10 1.9, that is 2.6 from 20 to 35 °C. */
  @Test
  void restingHeatRisesWithTemperature() {
    // broodless and above 27 °C no bee shivers; below, demand is held off by taking the difference
    double warm = restingWKg(35);
    double cool = restingWKg(20);
    assertEquals(2.6, warm / cool, 0.5);
  }

  private static double restingWKg(double c) {
    ColonyHeat colony =
        new ColonyHeat(new ColonySpec(10_000, 0.115, 0, 2, 1, 0, 0, false)); // ceiling 0: rest only
    colony.evaluate(c, c);
    return colony.heatW() / colony.massKg();
  }

  /** Chill coma: below 5 °C bees make less than 1 W/kg, whatever is asked of them. */
  @ParameterizedTest
  @CsvSource({"5", "0", "-10"})
  void coldBeesMakeNoHeat(double c) {
    ColonyHeat colony = colony(1, 0, 1);
    colony.evaluate(c, c - 5);
    assertTrue(colony.heatW() < 1, "W/kg: " + colony.heatW());
  }

  /** Nobody shivers above 38 °C: at 40 °C at most 20 W/kg are left. */
  @Test
  void hotBeesDoNotShiver() {
    ColonyHeat colony = colony(1, 1, 1);
    colony.evaluate(40, 30);
    assertTrue(colony.heatW() <= 20, "W/kg: " + colony.heatW());
  }

  private static double coreAfterTwoDays(double airC) {
    ColonySpec tenth = new ColonySpec(870, 0.115, 500, 1, 2, 40, 0.5, false);
    Outside outside = Hives.outside(airC);
    HiveModel m = Hives.model(Hives.closed(Hives.layers(Hives.PINE), 0.244, 1, 4), tenth, outside);
    Hives.run(m, 10, 2 * 86_400, 0, outside);
    return m.view().nestC(1);
  }

  /** Without heat, 0.1 kg of bees lose their cluster at −10 °C within two days. */
  @Test
  void aHandfulOfBeesIsLostInFrost() {
    assertTrue(coreAfterTwoDays(-10) < 10);
  }

  /** The same bees keep 30 °C or more where the hive stands in 20 °C. */
  @Test
  void theSameBeesLiveInWarmth() {
    assertTrue(coreAfterTwoDays(20) >= 30, "core " + coreAfterTwoDays(20));
  }

  /**
   * Hexose burns with 15.57 kJ/g, RQ 1: a gram of honey of 17 % water gives 12.6 kJ, 0.66 g of
   * water and 1.19 g of carbon dioxide; a watt takes 6.85 g of honey a day and frees 4.5 g of
   * water.
   */
  @Test
  void stoichiometryOfHoney() {
    double sugar = 0.81;
    assertEquals(sugar * 15_570, ColonyHeat.HONEY_J_G, 300);
    assertEquals(sugar * 6 * 18.015 / 180.156 + 0.17, ColonyHeat.WATER_G_G, 0.02);
    assertEquals(sugar * 6 * 44.01 / 180.156, ColonyHeat.CO2_G_G, 0.03);
    assertEquals(6.85, 86_400 / ColonyHeat.HONEY_J_G, 0.15);
    assertEquals(4.5, 86_400 / ColonyHeat.HONEY_J_G * ColonyHeat.WATER_G_G, 0.1);
    assertEquals(1.03, 5 * 30 * 86.4 / ColonyHeat.HONEY_J_G, 0.03); // kg in 30 days at 5 W
  }

  /** 5 W in a litre of outside air a minute: 1.58 % of carbon dioxide in what leaves. */
  @Test
  void exhaustOfFiveWatts() {
    assertEquals(1.58 + 0.04, 100 * exhaust(5, 1), 0.05);
  }

  /** R. Bahreini and R. W. Currie (2015), abstract: 0.43 to 8.44 % at 0.24 L/min in a store. */
  @Test
  void exhaustOfAClosedStoreLiesInTheMeasuredRange() {
    double share = 100 * exhaust(3, 0.24);
    assertTrue(share > 0.43 && share < 8.44, "percent: " + share);
  }

  /** Mole fraction of carbon dioxide behind a gas network of one zone at rest. */
  private static double exhaust(double watts, double litresPerMin) {
    double massRatio = 44.01 / 28.966;
    double airKgM3 = 101_325 / (MoistAir.GAS_CONSTANT_DRY_AIR * 308.15);
    Network gas = new Network(new double[] {0.04 * airKgM3}, List.of());
    for (int i = 0; i < 1000; i++) {
      gas.clear(3600);
      gas.reach(0, litresPerMin / 60_000 * airKgM3, 421e-6 * massRatio);
      gas.supply(0, watts / ColonyHeat.HONEY_J_G * ColonyHeat.CO2_G_G * 1e-3);
      gas.solve();
      gas.accept(3600);
    }
    return gas.start(0) / massRatio;
  }

  /**
   * Outside air of −10, 0 and 10 °C and 90 % (over water, as weather services report it) warmed to
   * 35 °C. Saturation over water 286.5, 611.2, 1228 and 5629 Pa: World Meteorological Organization
   * No. 8, annex of formulas. A published rule of thumb of 5, 11 and 21 % is for saturated air.
   */
  @ParameterizedTest
  @CsvSource({"-10, 286.5, 4.6", "0, 611.2, 9.8", "10, 1228, 19.6"})
  void warmedFrostIsDry(double c, double saturatedPa, double percent) {
    double pa = 0.9 * MoistAir.saturationWaterPa(c);
    double rh = 100 * pa / MoistAir.fastSaturationWaterPa(35);
    assertEquals(100 * 0.9 * saturatedPa / 5629, rh, 0.02);
    assertEquals(percent, rh, 0.05);
  }

  /**
   * Buoyant flows of hive openings at 20 K, by the two formulas of the ASHRAE handbook: litres a
   * minute.
   */
  @ParameterizedTest
  @CsvSource({"0.075, 0.0095, 0.69", "0.375, 0.020, 10.6"})
  void entranceAlone(double widthM, double heightM, double litresPerMin) {
    double m3s = AirFlow.exchangeM3S(0.6, widthM * heightM, heightM, 20, 0);
    assertEquals(litresPerMin, 60_000 * m3s, 0.02 * litresPerMin);
  }

  /**
   * Two openings: 7.1 and 2, 7.1 and 5 cm² 0.25 m apart, 10 and 10 cm² 0.4 m apart, by the form
   * with the mean temperature, √(2gHΔT/T̄): that is the mean of what goes in and what goes out.
   */
  @ParameterizedTest
  @CsvSource({"7.1, 2, 0.25, 4.1, 0.05", "7.1, 5, 0.25, 8.7, 0.05", "10, 10, 0.4, 19, 0.5"})
  void entranceAndVent(
      double lowCm2, double highCm2, double heightM, double litresPerMin, double rounding) {
    AirPath path =
        new AirPath(
            new double[] {heightM}, new double[1], 0.6 * lowCm2 * 1e-4, 0, new FanSpec(0, 0, 0));
    path.setVent(0.6 * highCm2 * 1e-4);
    path.evaluate(new double[] {20}, new int[] {0}, 0, 0, false);
    double mean = 60_000 * path.throughM3S() * 0.5 * (1 + 293.15 / 273.15);
    assertEquals(litresPerMin, mean, 0.02 * litresPerMin + rounding);
  }

  /** Flow vanishes with the difference and goes with its root. */
  @Test
  void flowGoesWithTheRootOfTheDifference() {
    double one = AirFlow.exchangeM3S(0.6, 1e-3, 0.01, 11, 10);
    double four = AirFlow.exchangeM3S(0.6, 1e-3, 0.01, 14, 10);
    assertEquals(2, four / one, 0.02);
    assertEquals(0, AirFlow.exchangeM3S(0.6, 1e-3, 0.01, 10, 10), 0);
  }

  /** A litre of air a second carries 1.21 W/K. */
  @Test
  void heatCarriedByALitreASecond() {
    double densityKgM3 = 101_325 / (MoistAir.GAS_CONSTANT_DRY_AIR * 293.15);
    assertEquals(1.21, 1e-3 * densityKgM3 * MoistAir.HEAT_DRY_AIR, 0.02);
  }

  /**
   * 5 W at 15 °C and 75 % inside, 0 °C and 90 % outside: 3 L/min carry the water out when equal
   * volumes go in and out; with equal masses of dry air it is 6 % less.
   */
  @Test
  void flowThatKeepsAColonyDry() {
    double waterKgS = 5 / ColonyHeat.HONEY_J_G * ColonyHeat.WATER_G_G * 1e-3;
    double in = MoistAir.humidityRatio(0.75 * MoistAir.saturationWaterPa(15), 101_325);
    double out = MoistAir.humidityRatio(0.9 * MoistAir.saturationWaterPa(0), 101_325);
    double densityKgM3 = 101_325 / (MoistAir.GAS_CONSTANT_DRY_AIR * 288.15);
    assertEquals(2.99, waterKgS / (in - out) / densityKgM3 * 60_000, 0.2);
  }
}
