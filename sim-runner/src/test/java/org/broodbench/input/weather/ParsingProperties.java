package org.broodbench.input.weather;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import net.jqwik.api.constraints.Size;
import net.jqwik.api.constraints.StringLength;
import org.broodbench.input.BadInput;

class ParsingProperties {
  private static LineSource lines(byte[] bytes) {
    return new LineSource(new ByteArrayInputStream(bytes), new ProblemList("w"));
  }

  private static Fields one(String text) {
    LineSource lines = lines(text.getBytes(StandardCharsets.UTF_8));
    lines.next();
    Fields f = new Fields(',');
    f.split(lines);
    return f;
  }

  /** The own number parser gives the very double that the platform gives. */
  @Property(tries = 2000)
  void decimalNumbersAreParsedExactly(
      @ForAll long mantissa, @ForAll @IntRange(min = 0, max = 18) int decimals) {
    String digits = String.format("%019d", Math.abs(mantissa / 2));
    int cut = digits.length() - decimals;
    String text =
        (mantissa < 0 ? "-" : "") + digits.substring(0, cut) + "." + digits.substring(cut);
    assertEquals(Double.parseDouble(text), one(text).number(0), 0.0, text);
  }

  @Property(tries = 2000)
  void printedDoublesAreParsedExactly(@ForAll double value) {
    String text = Double.toString(value);
    assertEquals(Double.isFinite(value) ? value : Double.NaN, one(text).number(0), 0.0, text);
  }

  /** Whatever is not a number is NaN, never a number and never a crash. */
  @Property(tries = 1000)
  void noTextCrashesTheNumberParser(@ForAll @StringLength(max = 12) String text) {
    double got = one(text.replaceAll("[\\r\\n,\"\\x00]", "x")).number(0);
    if (!Double.isNaN(got)) {
      String clean = text.replaceAll("[\\r\\n,\"\\x00]", "x").strip();
      assertEquals(Double.parseDouble(clean), got, 0.0);
    }
  }

  @Property(tries = 1000)
  void isoStampsAreReadAsTheLibraryReadsThem(
      @ForAll @LongRange(min = -8_000_000_000L, max = 16_000_000_000L) long epochS) {
    String text = Instant.ofEpochSecond(epochS).toString();
    assertEquals(epochS, Stamps.isoUtc(one(text), 0), text);
    LocalDateTime t = LocalDateTime.ofEpochSecond(epochS, 0, ZoneOffset.UTC);
    String german =
        String.format(
            "%02d.%02d.%04d %02d:%02d:%02d",
            t.getDayOfMonth(),
            t.getMonthValue(),
            t.getYear(),
            t.getHour(),
            t.getMinute(),
            t.getSecond());
    assertEquals(epochS, Stamps.byOrder(german, "dmyhns"), german);
  }

  /** Any bytes give lines that hold no line end and, joined, all bytes that are not zero. */
  @Property(tries = 500)
  void linesHoldAllBytes(
      @ForAll @Size(max = 300) List<@IntRange(min = 0, max = 13) Integer> values) {
    byte[] bytes = new byte[values.size()];
    int expected = 0;
    for (int i = 0; i < bytes.length; i++) {
      bytes[i] = values.get(i).byteValue();
      expected += bytes[i] != 0 && bytes[i] != '\n' && bytes[i] != '\r' ? 1 : 0;
    }
    LineSource lines = lines(bytes);
    int got = 0;
    while (lines.next()) {
      got += lines.length();
    }
    assertEquals(expected, got);
  }

  /** Damaging one character of a good file gives a series or problems, nothing else. */
  @Property(tries = 300)
  void oneWrongByteNeverCrashes(@ForAll @IntRange(min = 0, max = 400) int at, @ForAll byte wrong) {
    StringBuilder b =
        new StringBuilder("# broodbench weather 1\n# step_s: 3600\nfrom_utc,air_c,ghi_w_m2\n");
    for (int h = 0; h < 12; h++) {
      b.append(String.format("2027-04-20T%02d:00:00Z,%d.5,%d%n", h, h, 10 * h));
    }
    byte[] bytes = b.toString().getBytes(StandardCharsets.UTF_8);
    bytes[at % bytes.length] = wrong;
    ReadContext context =
        new ReadContext(new ProblemList("w"), ReadOptions.DEFAULT, false, List.of());
    try {
      new TidyCsv()
          .read(new LineSource(new ByteArrayInputStream(bytes), context.problems()), context);
    } catch (BadInput e) {
      assertEquals(true, e.problems().size() >= 1);
    }
  }
}
