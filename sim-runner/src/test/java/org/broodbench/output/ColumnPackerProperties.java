package org.broodbench.output;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Base64;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;

class ColumnPackerProperties {
  @Property(tries = 300)
  void anyColumnComesBack(
      @ForAll @Size(max = 700) List<@IntRange(min = -(1 << 28), max = 1 << 28) Integer> column) {
    int[] values = column.stream().mapToInt(i -> i).toArray();
    assertArrayEquals(values, unpack(ColumnPacker.pack(values), values.length));
  }

  @Property(tries = 300)
  void smallStepsComeBack(
      @ForAll @Size(max = 900) List<@IntRange(min = -3, max = 3) Integer> steps) {
    int[] values = new int[steps.size()];
    for (int i = 1; i < values.length; i++) {
      values[i] = values[i - 1] + steps.get(i);
    }
    assertArrayEquals(values, unpack(ColumnPacker.pack(values), values.length));
  }

  @Property(tries = 20)
  void whatRepeatsCostsNearlyNothing(@ForAll @IntRange(min = -1000, max = 1000) int value) {
    int[] values = new int[80_640];
    java.util.Arrays.fill(values, value);
    assertTrue(ColumnPacker.pack(values).length() < 300);
  }

  /** Reads the bits as the class comment tells, written apart from the packer. */
  private static int[] unpack(String text, int count) {
    byte[] raw = Base64.getDecoder().decode(text);
    int[] at = {0};
    int[] out = new int[count];
    int order = 0;
    int k = 0;
    for (int i = 0; i < count; i++) {
      if (i % ColumnPacker.BLOCK == 0) {
        order = (int) read(raw, at, 2);
        k = order == 3 ? 0 : (int) read(raw, at, 4);
      }
      int one = i > 0 ? out[i - 1] : 0;
      int two = i > 1 ? out[i - 2] : 0;
      if (order == 3) {
        out[i] = one;
        continue;
      }
      int ones = 0;
      while (ones < ColumnPacker.ESCAPE && read(raw, at, 1) == 1) {
        ones++;
      }
      long u =
          ones < ColumnPacker.ESCAPE ? ((long) ones << k) + read(raw, at, k) : read(raw, at, 32);
      long rest = u % 2 == 0 ? u / 2 : -(u + 1) / 2;
      out[i] = (int) (rest + (order == 0 ? 0 : order == 1 ? one : 2L * one - two));
    }
    return out;
  }

  private static long read(byte[] raw, int[] at, int bits) {
    long v = 0;
    for (int b = 0; b < bits; b++, at[0]++) {
      v = v << 1 | raw[at[0] >> 3] >> 7 - (at[0] & 7) & 1;
    }
    return v;
  }
}
