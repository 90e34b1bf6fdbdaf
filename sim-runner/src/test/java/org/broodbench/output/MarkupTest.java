package org.broodbench.output;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class MarkupTest {
  private static String read(boolean us, String prose) {
    return new Markup(us).prose(prose).replaceAll("<[^>]+>", "");
  }

  @Test
  void proseReadsTheSameInMetric() {
    String prose =
        "below 32 °C for 150.2 h (−3.5 °C), between 33 and 36 °C, 12.0 cm², 5 min, 40 Ah";
    assertEquals(prose, read(false, prose));
  }

  /** 32 °C = 89.6 °F; 1 K = 1.8 °F; 1 in = 25.4 mm; 1 in² = 6.4516 cm²; 1 lb = 0.45359237 kg. */
  @Test
  void proseIsConvertedNumberByNumber() {
    assertEquals("below 89.6 °F for 9 h", read(true, "below 32 °C for 9 h"));
    assertEquals("between 91.4 and 96.8 °F", read(true, "between 33 and 36 °C"));
    assertEquals("25.7 °F outdoors", read(true, "−3.5 °C outdoors"));
    assertEquals("differential = 0.9 °F", read(true, "differential = 0.5 K"));
    assertEquals("insulation = 1.97 in", read(true, "insulation = 50 mm"));
    assertEquals("9.9 lb of stores", read(true, "4.5 kg of stores"));
    assertEquals("vent 1.86 in²", read(true, "vent 12.0 cm²"));
  }

  @Test
  void otherUnitsAreLeftAlone() {
    String prose = "1000 W/m² of sun, 0.57 W/K per kg, 12 m³, 5 min, 3 gaps, 2 Kelvin, a5 g";
    assertEquals(prose.replace("0.57 W/K", "0.317 W/°F"), read(true, prose));
  }

  @Test
  void tiesGoAwayFromZeroAsInTheScript() {
    assertEquals("0.3", Quantity.plain(0.25, 1));
    assertEquals("−0.3", Quantity.plain(-0.25, 1));
    assertEquals("0.0", Quantity.plain(-0.04, 1));
    assertEquals("1.00", Quantity.plain(1.005, 2));
  }

  @Test
  void shortTimesAreNotRoundedToNothing() {
    assertEquals("50 s", Quantity.hours(50 / 3600.0));
    assertEquals("12 min", Quantity.hours(0.2));
    assertEquals("0.0 h", Quantity.hours(0));
    assertEquals("1.5 h", Quantity.hours(1.5));
  }
}
