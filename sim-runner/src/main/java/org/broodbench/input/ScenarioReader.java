package org.broodbench.input;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import org.broodbench.rig.Scenario;
import org.broodbench.rig.SizeSpec;
import org.broodbench.rig.Window;

/** Reads a scenario file into records, or refuses it with every problem at once. */
public final class ScenarioReader {
  /** Twenty times the longest scenario with every key and every row. */
  private static final int MOST_BYTES = 1 << 20;

  /** More would not be read by anyone. */
  private static final int MOST_PROBLEMS = 100;

  private ScenarioReader() {}

  /**
   * Reads a file.
   *
   * @param file the file; problems name it as the user gave it
   * @param settings {@code KEY=VALUE} texts that go on top, the last of a key wins
   * @throws BadInput with every problem
   */
  public static Scenario read(Path file, List<String> settings) {
    return read(file.toString(), bytes(file), settings);
  }

  /**
   * The bytes of a scenario's file.
   *
   * @throws BadInput where it cannot be read, or is far too long to be one
   */
  public static byte[] bytes(Path file) {
    return PlainText.bytes(file, "a scenario", MOST_BYTES);
  }

  /**
   * Reads the bytes of a file or of a resource.
   *
   * @param name how problems name it; the scenario keeps only the part after the last slash
   * @throws BadInput with every problem
   */
  public static Scenario read(String name, byte[] bytes, List<String> settings) {
    return scenario(name.replaceAll(".*[/\\\\]", ""), sha256(bytes), values(name, bytes, settings));
  }

  /**
   * What may be bought for the rig of a file.
   *
   * @throws BadInput with every problem
   */
  public static SizeSpec sizing(String name, byte[] bytes, List<String> settings) {
    return SizeKeys.size(values(name, bytes, settings));
  }

  private static Values values(String name, byte[] bytes, List<String> settings) {
    if (bytes.length > MOST_BYTES) {
      throw new BadInput(
          List.of(new Problem(name, 0, 0, "", "a text of over a million bytes", "a scenario", "")));
    }
    String text = decode(name, bytes);
    Keys keys = ScenarioKeys.all();
    ScenarioText.Reading reading = ScenarioText.read(keys, name, text, settings);
    Values values = reading.values();
    ScenarioKeys.check(values, new Checks(values, reading.problems()));
    if (!reading.problems().isEmpty()) {
      List<Problem> sorted = ScenarioText.sorted(reading.problems());
      throw new BadInput(sorted.subList(0, Math.min(MOST_PROBLEMS, sorted.size())));
    }
    return values;
  }

  /** What a run rests on; keys of sizing, tuning and logs are no assumption of it. */
  private static List<String> assumedInRun(Values v) {
    return v.assumed().stream().filter(a -> !a.matches("(size|tune|log)\\..*")).toList();
  }

  private static Scenario scenario(String fileName, String sha256, Values v) {
    Window window = SiteKeys.window(v);
    return new Scenario(
        v.text("title"),
        fileName,
        sha256,
        SiteKeys.place(v),
        SiteKeys.weather(v),
        window,
        HiveKeys.hive(v),
        ColonyKeys.colony(v),
        HeaterKeys.heater(v),
        HiveKeys.fan(v),
        ProbeKeys.probes(v),
        ProbeKeys.sensors(v),
        ControllerKeys.controller(v),
        PvKeys.pv(v),
        BatteryKeys.battery(v),
        InverterKeys.inverter(v),
        PowerKeys.wiring(v),
        PowerKeys.shore(v),
        PowerKeys.loads(v),
        RequirementKeys.requirements(v),
        EventKeys.events(v, window),
        SiteKeys.run(v),
        assumedInRun(v),
        PaperKeys.paper(v));
  }

  /** UTF-8, refused at the line of the first byte that is none. */
  private static String decode(String name, byte[] bytes) {
    CharsetDecoder decoder = StandardCharsets.UTF_8.newDecoder();
    ByteBuffer in = ByteBuffer.wrap(bytes);
    CharBuffer out = CharBuffer.allocate(bytes.length + 1);
    CoderResult result = decoder.decode(in, out, true);
    out.flip();
    String text = out.toString();
    if (result.isError()) {
      int line = (int) text.chars().filter(c -> c == '\n').count() + 1;
      int column = text.length() - text.lastIndexOf('\n');
      String found = String.format(java.util.Locale.ROOT, "byte %02x", bytes[in.position()] & 0xff);
      String hint = "Save the file as UTF-8, or write degC instead of the degree sign.";
      throw new BadInput(
          List.of(new Problem(name, line, column, "", found, "text in UTF-8", hint)));
    }
    return text;
  }

  static String sha256(byte[] bytes) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }
}
