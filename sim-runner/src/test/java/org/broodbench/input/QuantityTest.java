package org.broodbench.input;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.broodbench.matter.Dimension;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class QuantityTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          32 degC        | TEMPERATURE            | 32
          32 °C          | TEMPERATURE            | 32
          32°C           | TEMPERATURE            | 32
          90 °F          | TEMPERATURE            | 32.22222222222222
          90 degF        | TEMPERATURE            | 32.22222222222222
          2 degF         | TEMPERATURE            | -16.666666666666668
          300 K          | TEMPERATURE            | 26.85
          -5 degC        | TEMPERATURE            | -5
          −5 °C          | TEMPERATURE            | -5
          2 °F           | TEMPERATURE_DIFFERENCE | 1.1111111111111112
          2 K            | TEMPERATURE_DIFFERENCE | 2
          2 degC         | TEMPERATURE_DIFFERENCE | 2
          12 V           | VOLTAGE                | 12
          2.5 mm2        | AREA                   | 2.5e-6
          2.5 mm²        | AREA                   | 2.5e-6
          16 cm2         | AREA                   | 16e-4
          14 AWG         | AREA                   | 2.0809e-6
          AWG 14         | AREA                   | 2.0809e-6
          2/0 AWG        | AREA                   | 67.43e-6
          3/4 in         | LENGTH                 | 0.01905
          1 1/2 in       | LENGTH                 | 0.0381
          1½ in          | LENGTH                 | 0.0381
          2 ft 3 in      | LENGTH                 | 0.6858
          2 ft 3 1/2 in  | LENGTH                 | 0.6985
          0.8 mm         | LENGTH                 | 0.0008
          5 min          | TIME                   | 300
          1 h 30 min     | TIME                   | 5400
          2 d 14 h       | TIME                   | 223200
          60 W           | POWER                  | 60
          60W            | POWER                  | 60
          1e3 W          | POWER                  | 1000
          .5 W           | POWER                  | 0.5
          100 Ah         | CHARGE                 | 360000
          1.2 kWh        | ENERGY                 | 4320000
          30 mOhm        | RESISTANCE             | 0.03
          30 mΩ          | RESISTANCE             | 0.03
          95 %           | RATIO                  | 0.95
          95%            | RATIO                  | 0.95
          0.95           | RATIO                  | 0.95
          5000 ppm       | RATIO                  | 0.005
          3 L/min        | FLOW                   | 5e-5
          3 %/month      | DAILY_RATE             | 9.8554533508541e-4
          2 K/h          | TEMPERATURE_RATE       | 2
          -0.4 %/K       | RATIO_PER_KELVIN       | -0.004
          47 N           | LATITUDE               | 47
          33.9° S        | LATITUDE               | -33.9
          10 W           | LONGITUDE              | -10
          1 lb 8 oz      | MASS                   | 0.680388555
          120 EUR        | MONEY                  | 120
          0.13 W/(m K)   | THERMAL_CONDUCTIVITY   | 0.13
          0.13 W/m K     | THERMAL_CONDUCTIVITY   | 0.13
          """)
  void readsWhatPeopleWrite(String text, Dimension dimension, double base) throws Exception {
    double tolerance = text.contains("AWG") ? 2e-4 : 1e-14;
    Quantity quantity = Quantity.parse(text, dimension);
    assertEquals(base, quantity.base(), tolerance * Math.abs(base));
    assertEquals(text, quantity.text());
    assertEquals(dimension, quantity.dimension());
  }

  @Test
  void hardBlanksReadAsBlanks() throws Exception {
    assertEquals(32, Quantity.parse("32\u00a0°C", Dimension.TEMPERATURE).base());
    assertEquals(32, Quantity.parse("32\u202f°C", Dimension.TEMPERATURE).base());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          2,5 mm2      | AREA        | The decimal sign is a point: write "2.5 mm2".
          1,000 W      | POWER       | A comma is not read: write 1000, or 1.000 if a decimal was meant.
          1 000 W      | POWER       | Separators of thousands are not read: write 1000.
          1'000 W      | POWER       | Separators of thousands are not read: write 1000.
          5            | TIME        | The unit is missing: "5 s"?
          32           | TEMPERATURE | The unit is missing: "32 degC"?
          32 W         | TEMPERATURE | W is a unit of power.
          60 w         | POWER       | Capital letters count in a unit: did you mean W?
          1.2 kwh      | ENERGY      | Capital letters count in a unit: did you mean kWh?
          5 mins.      | TIME        | The unit mins. is not known here. Did you mean mins?
          5 parsec     | LENGTH      | The unit parsec is not known here.
          warm         | TEMPERATURE | The number comes first, then the unit.
          1/0 in       | LENGTH      | A fraction cannot be divided by 0.
          3 in 2 ft    | LENGTH      | Write one number with one unit.
          1 V 200 mV   | VOLTAGE     | Write one number with one unit.
          -1 h 30 min  | TIME        | Write one number with one unit.
          14.5 AWG     | AREA        | A wire gauge is a whole number from 4/0 to 40: "14 AWG".
          41 AWG       | AREA        | A wire gauge is a whole number from 4/0 to 40.
          5/0 AWG      | AREA        | A wire gauge is a whole number from 4/0 to 40.
          """)
  void refusesWithAdvice(String text, Dimension dimension, String hint) {
    QuantityRefused refused =
        assertThrows(QuantityRefused.class, () -> Quantity.parse(text, dimension));
    assertEquals(hint, refused.hint());
    assertTrue(refused.allowed().contains("a number with a unit: "), refused.allowed());
  }

  @Test
  void saysWhatIsAllowed() {
    assertEquals(
        "a number with a unit: degC, degF, K", Quantity.allowed(List.of(Dimension.TEMPERATURE)));
    assertEquals(
        "a bare number, or a number with a unit: %, ppm",
        Quantity.allowed(List.of(Dimension.RATIO)));
  }

  @Test
  void refusesEmptyAndInfinite() {
    assertThrows(QuantityRefused.class, () -> Quantity.parse("", Dimension.POWER));
    assertThrows(QuantityRefused.class, () -> Quantity.parse("  ", Dimension.POWER));
    assertThrows(QuantityRefused.class, () -> Quantity.parse("1e999 W", Dimension.POWER));
    assertThrows(QuantityRefused.class, () -> Quantity.parse("NaN W", Dimension.POWER));
  }
}
