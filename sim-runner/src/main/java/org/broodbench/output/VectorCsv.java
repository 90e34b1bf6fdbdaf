package org.broodbench.output;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import org.broodbench.controller.Setting;
import org.broodbench.firmware.Channel;
import org.broodbench.firmware.CommandField;
import org.broodbench.firmware.Expected;
import org.broodbench.firmware.Script;
import org.broodbench.firmware.Tick;

/**
 * A vector as plain comma-separated values, format {@code broodbench-vector/1}
 * (controller-core/PROTOCOL.md): settings, then readings and expected commands step by step. The
 * first cell of a row says what the row is; nothing needs quotes.
 */
public final class VectorCsv {
  private VectorCsv() {}

  /** The whole file with one vector. */
  public static byte[] bytes(Script.Fixed vector) {
    return bytes(List.of(vector));
  }

  /** The whole file; every vector has the same settings and begins at power-up. */
  public static byte[] bytes(List<Script.Fixed> vectors) {
    Script.Fixed vector = vectors.get(0);
    StringBuilder csv = new StringBuilder();
    csv.append("format,broodbench-vector/1\n");
    csv.append("name,").append(vector.name().replace(",", ";")).append('\n');
    csv.append("place,").append(vector.settings().place().name().toLowerCase(Locale.ROOT));
    csv.append("\nchemistry,");
    csv.append(vector.settings().chemistry().name().toLowerCase(Locale.ROOT)).append('\n');
    for (Setting setting : Setting.values()) {
      csv.append("setting,").append(setting.key()).append(',');
      csv.append(vector.settings().get(setting)).append('\n');
    }
    columns(csv);
    for (int v = 0; v < vectors.size(); v++) {
      if (v > 0) {
        csv.append("begin,").append(vectors.get(v).name().replace(",", ";")).append('\n');
      }
      List<int[]> expected = Expected.of(vectors.get(v));
      for (int i = 0; i < expected.size(); i++) {
        row(csv, vectors.get(v).ticks().get(i), expected.get(i));
      }
    }
    return csv.toString().getBytes(StandardCharsets.UTF_8);
  }

  private static void columns(StringBuilder csv) {
    csv.append("columns,now_millis");
    for (Channel channel : Channel.values()) {
      csv.append(',').append(channel.key());
    }
    for (Channel channel : Channel.values()) {
      csv.append(',').append(channel.name().toLowerCase(Locale.ROOT)).append("_age_millis");
    }
    csv.append(",charger_full,shore_present,button,test_request");
    for (CommandField field : CommandField.values()) {
      csv.append(',').append(field.key());
    }
    csv.append('\n');
  }

  private static void row(StringBuilder csv, Tick tick, int[] commands) {
    switch (tick.kind()) {
      case RESTART -> csv.append("restart\n");
      case POWER_LOSS -> csv.append("power_loss\n");
      case SETTING ->
          csv.append("change,")
              .append(tick.setting().key())
              .append(',')
              .append(tick.settingValue())
              .append('\n');
      case STEP -> {
        csv.append("step,").append(Integer.toUnsignedString(tick.nowMillis()));
        for (int i = 0; i < Channel.COUNT; i++) {
          csv.append(',').append(tick.valid(i) ? String.valueOf(tick.value(i)) : "");
        }
        for (int i = 0; i < Channel.COUNT; i++) {
          csv.append(',').append(tick.valid(i) ? String.valueOf(tick.ageMillis(i)) : "");
        }
        for (int bit = 0; bit < 4; bit++) {
          csv.append(',').append(tick.switches() >> bit & 1);
        }
        for (int value : commands) {
          csv.append(',').append(value);
        }
        csv.append('\n');
      }
    }
  }
}
