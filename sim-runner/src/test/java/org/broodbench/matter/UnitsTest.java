package org.broodbench.matter;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class UnitsTest {
  /**
   * NIST SP 811 appendix B.8, factors to the seven digits printed there; the conductance in Btu/(h
   * degF) is not printed and follows from the Btu and the degree.
   */
  @ParameterizedTest
  @CsvSource({
    "LENGTH, in, 2.54e-2",
    "LENGTH, ft, 3.048e-1",
    "MASS, lb, 4.535924e-1",
    "MASS, oz, 2.834952e-2",
    "VOLUME, gal, 3.785412e-3",
    "VOLUME, pt, 4.731765e-4",
    "ENERGY, Btu, 1.055056e3",
    "POWER, Btu/h, 2.930711e-1",
    "PRESSURE, psi, 6.894757e3",
    "FLOW, cfm, 4.719474e-4",
    "SPEED, mph, 4.4704e-1",
    "DENSITY, lb/ft3, 1.601846e1",
    "INSULANCE, ft2.degF.h/Btu, 1.761102e-1",
    "THERMAL_CONDUCTANCE, Btu/(h degF), 5.275279e-1",
    "IRRADIANCE, Btu/(h ft2), 3.154591",
    "TEMPERATURE_DIFFERENCE, degF, 5.555556e-1",
    "CHARGE, Ah, 3.6e3",
    "ENERGY, kWh, 3.6e6"
  })
  void factorsAgreeWithPublishedOnes(Dimension dimension, String unit, double factor) {
    assertEquals(factor, Units.get(dimension, unit).toBase(1), 5e-7 * factor);
  }

  @Test
  void temperaturesShiftAndDifferencesDoNot() {
    assertEquals(0, Units.get(Dimension.TEMPERATURE, "degF").toBase(32));
    assertEquals(100, Units.get(Dimension.TEMPERATURE, "degF").toBase(212), 1e-12);
    assertEquals(-273.15, Units.get(Dimension.TEMPERATURE, "K").toBase(0));
    assertEquals(10 / 9.0, Units.get(Dimension.TEMPERATURE_DIFFERENCE, "degF").toBase(2), 1e-15);
  }

  /** ASTM B258 table 1: nominal cross-sections of solid round wire, mm2. */
  @ParameterizedTest
  @CsvSource({"18, 0.823", "14, 2.08", "10, 5.26", "6, 13.3", "2, 33.6", "0, 53.5", "-3, 107.2"})
  void gaugesAgreeWithTheTable(int gauge, double mm2) {
    assertEquals(mm2, Units.awgAreaM2(gauge) * 1e6, 2e-3 * mm2);
  }

  @Test
  void everyDimensionHasAUnitWhoseBaseValueIsOne() {
    for (Dimension dimension : EnumSet.allOf(Dimension.class)) {
      assertTrue(
          Units.of(dimension).stream().anyMatch(u -> u.toBase(1) == 1)
              || dimension == Dimension.CHARGE,
          dimension.name());
    }
  }

  @Test
  void noSpellingNamesTwoUnitsOfADimension() {
    for (Dimension dimension : EnumSet.allOf(Dimension.class)) {
      List<String> seen = new ArrayList<>();
      for (Unit unit : Units.of(dimension)) {
        List<String> own = new ArrayList<>(unit.otherSpellings());
        own.add(unit.spelling());
        if (!unit.symbol().equals(unit.spelling())) {
          own.add(unit.symbol());
        }
        for (String spelling : own) {
          assertTrue(!seen.contains(spelling), dimension + " " + spelling);
          seen.add(spelling);
        }
      }
    }
  }

  @Test
  void showsForPeopleAndWritesForFiles() {
    Unit celsius = Units.get(Dimension.TEMPERATURE, "degC");
    assertEquals("32.0 °C", Units.show(32, celsius, 1));
    assertEquals("89.6 °F", Units.show(32, Units.usual(celsius), 1));
    assertEquals("0.0 °C", Units.show(-0.04, celsius, 1));
    assertEquals("32 degC", Units.write(32, celsius));
    assertEquals("0.35 mm", Units.write(0.00035, Units.get(Dimension.LENGTH, "mm")));
    assertEquals("0.95", Units.write(0.95, Units.get(Dimension.RATIO, "")));
    assertEquals(
        "1.8 °F", Units.show(1, Units.usual(Units.get(Dimension.TEMPERATURE_DIFFERENCE, "K")), 1));
    assertEquals("60 W", Units.show(60, Units.usual(Units.get(Dimension.POWER, "W")), 0));
  }

  @Test
  void anUnknownUnitInTheProgramIsAFault() {
    assertThrows(IllegalArgumentException.class, () -> Units.get(Dimension.POWER, "degC"));
  }
}
