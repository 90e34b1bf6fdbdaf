package org.broodbench.input;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.Locale;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.StringLength;
import org.broodbench.matter.Dimension;
import org.broodbench.matter.Unit;
import org.broodbench.matter.Units;

class QuantityProperties {
  @Provide
  Arbitrary<Unit> unit() {
    return Arbitraries.of(
        Units.all().stream().filter(u -> !u.spelling().equals(Units.WIRE_GAUGE)).toList());
  }

  /** Twelve digits are written, so half a unit of the twelfth may be lost. */
  @Property(tries = 2000)
  void writtenValuesReadBack(
      @ForAll("unit") Unit unit, @ForAll @DoubleRange(min = -1e5, max = 1e5) double value)
      throws QuantityRefused {
    double base = unit.toBase(value);
    String text = Units.write(base, unit);
    double again = Quantity.parse(text, unit.dimension()).base();
    double size = Math.max(Math.abs(base), Math.abs(unit.shift() * unit.toBase(1)));
    assertEquals(base, again, 1e-11 * Math.max(size, Math.abs(unit.numerator() * 1e-9)), text);
  }

  /** What people are shown reads back within half of the last digit shown. */
  @Property(tries = 2000)
  void shownValuesReadBack(
      @ForAll("unit") Unit unit, @ForAll @DoubleRange(min = -1e5, max = 1e5) double value)
      throws QuantityRefused {
    String text = Units.show(unit.toBase(value), unit, 2);
    double again = unit.fromBase(Quantity.parse(text, unit.dimension()).base());
    assertEquals(value, again, 0.005 + 1e-9, text);
  }

  @Property(tries = 1000)
  void everySpellingOfAUnitMeansTheSame(@ForAll("unit") Unit unit) throws QuantityRefused {
    double expected = unit.toBase(3);
    for (String spelling : unit.otherSpellings()) {
      assertEquals(expected, Quantity.parse("3 " + spelling, unit.dimension()).base(), spelling);
    }
    assertEquals(expected, Quantity.parse("3 " + unit.symbol(), unit.dimension()).base());
  }

  @Property(tries = 2000)
  void anyTextIsReadOrRefusedAndNothingElse(
      @ForAll @StringLength(max = 20) String text, @ForAll Dimension dimension) {
    try {
      assertFalse(Double.isNaN(Quantity.parse(text, dimension).base()));
    } catch (QuantityRefused e) {
      assertFalse(e.allowed().isEmpty());
    }
  }

  @Property(tries = 1000)
  void anyTextOfDigitsAndSignsIsReadOrRefused(
      @ForAll("almost") String text, @ForAll Dimension dimension) {
    anyTextIsReadOrRefusedAndNothingElse(text.toLowerCase(Locale.ROOT), dimension);
    anyTextIsReadOrRefusedAndNothingElse(text, dimension);
  }

  @Provide
  Arbitrary<String> almost() {
    return Arbitraries.strings().withChars("0123456789/. -+,'eminfthAWGKC°%").ofMaxLength(14);
  }
}
