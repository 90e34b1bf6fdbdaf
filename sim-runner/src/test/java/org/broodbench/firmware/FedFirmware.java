package org.broodbench.firmware;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.broodbench.controller.Chemistry;
import org.broodbench.controller.ProbePlace;
import org.broodbench.controller.Readings;
import org.broodbench.controller.Settings;

/** A firmware whose every answer is given beforehand, whatever it is asked. */
public final class FedFirmware implements Transport {
  private static final int TICKS = 12;
  private static final long TIMEOUT_MILLIS = 40;

  private final InputStream answers;

  private FedFirmware(byte[] answers) {
    this.answers = new ByteArrayInputStream(answers);
  }

  /**
   * Says hello to it and plays a short vector; whatever it answers may be a {@link FirmwareFault}.
   *
   * @param lines its answers; a line without a checksum gets the right one
   */
  public static void talk(byte[] lines) {
    byte[] answers = withChecksums(lines);
    try (Session session = Session.open(() -> new FedFirmware(answers), TIMEOUT_MILLIS, 0)) {
      Settings settings = session.settings();
      boolean own = settings != null;
      session.run(
          vector(own ? settings : Settings.defaults(ProbePlace.BROOD_COMB, Chemistry.AGM)),
          Long.MAX_VALUE);
      session.notReported();
    } catch (FirmwareFault told) {
      if (told.getMessage() == null || told.getMessage().isEmpty()) {
        throw new IllegalStateException("a fault without words", told);
      }
    }
  }

  private static Script vector(Settings settings) {
    List<Tick> ticks = new ArrayList<>();
    for (int i = 0; i < TICKS; i++) {
      Readings readings = new Readings();
      readings.broodA.put(3400 - 80 * i);
      readings.pan.put(3000);
      readings.battery.put(12_600);
      ticks.add(Tick.step(1000 * i, readings));
    }
    ticks.add(TICKS / 2, Tick.restart(false));
    return new Script.Fixed("fed", settings, ticks);
  }

  private static byte[] withChecksums(byte[] lines) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    int from = 0;
    for (int i = 0; i < lines.length; i++) {
      if (lines[i] == '\n') {
        boolean summed = i - from >= 5 && lines[i - 5] == '*';
        byte[] plain = java.util.Arrays.copyOfRange(lines, from, i);
        out.writeBytes(plain);
        if (!summed) {
          String sum = String.format(java.util.Locale.ROOT, "*%04x", Wire.sum(plain, 0, i - from));
          out.writeBytes(sum.getBytes(StandardCharsets.US_ASCII));
        }
        out.write('\n');
        from = i + 1;
      }
    }
    out.write(lines, from, lines.length - from);
    return out.toByteArray();
  }

  @Override
  public InputStream in() {
    return answers;
  }

  @Override
  public OutputStream out() {
    return OutputStream.nullOutputStream();
  }

  @Override
  public boolean reliable() {
    return true;
  }

  @Override
  public String ended() {
    return "it ended";
  }

  @Override
  public boolean neverBegan() {
    return false;
  }

  @Override
  public void close() {}
}
