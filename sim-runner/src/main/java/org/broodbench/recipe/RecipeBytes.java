package org.broodbench.recipe;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.zip.DeflaterOutputStream;
import java.util.zip.InflaterInputStream;
import org.broodbench.input.ScenarioReader;
import org.broodbench.input.ScenarioWeather;
import org.broodbench.rig.Scenario;
import org.broodbench.rig.Window;
import org.broodbench.sky.Place;
import org.broodbench.sky.Quality;
import org.broodbench.sky.Stand;
import org.broodbench.sky.Variable;
import org.broodbench.sky.WeatherSeries;
import org.broodbench.stress.StressPlan;

/**
 * A recipe as bytes and back: plain numbers and texts, each text and column with its length before
 * it, all of it deflated. Reading makes nothing but numbers, texts and the records of this program.
 */
public final class RecipeBytes {
  /** Most bytes of a recipe before deflating: a century of hours with every variable is half. */
  private static final int MOST = 128 << 20;

  private static final Variable[] VARIABLES = Variable.values();

  private RecipeBytes() {}

  /** Writes. */
  public static byte[] of(Recipe r) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (DataOutputStream out = new DataOutputStream(new DeflaterOutputStream(bytes))) {
      Scenario s = r.weather().scenario();
      out.writeByte(r.kind().ordinal());
      out.writeInt(r.count());
      out.writeBoolean(r.inSeason());
      out.writeBoolean(r.plan().everyPair());
      out.writeBoolean(r.plan().allLosses());
      texts(out, r.plan().pairs());
      text(out, s.fileName());
      block(out, r.text());
      texts(out, r.settings());
      place(out, s.place());
      out.writeLong(s.window().fromEpochS());
      out.writeInt(s.window().days());
      text(out, r.weather().file());
      series(out, r.weather().series());
    } catch (IOException e) {
      throw new UncheckedIOException(e); // memory does not fail to be written
    }
    return bytes.toByteArray();
  }

  /**
   * Reads back what {@link #of} wrote.
   *
   * @throws IOException where the bytes are no recipe
   * @throws org.broodbench.input.BadInput where its scenario cannot be used
   */
  public static Recipe read(byte[] bytes) throws IOException {
    byte[] all = new InflaterInputStream(new ByteArrayInputStream(bytes)).readNBytes(MOST + 1);
    if (all.length > MOST) {
      throw new IOException("the recipe is larger than " + MOST + " bytes");
    }
    try (DataInputStream in = new DataInputStream(new ByteArrayInputStream(all))) {
      Recipe.Kind kind = of(Recipe.Kind.values(), in.readByte());
      int count = in.readInt();
      boolean inSeason = in.readBoolean();
      boolean everyPair = in.readBoolean();
      boolean allLosses = in.readBoolean();
      StressPlan plan = new StressPlan(everyPair, texts(in), allLosses);
      String fileName = text(in);
      byte[] text = block(in);
      List<String> settings = texts(in);
      Place place = place(in);
      Window window = new Window(in.readLong(), in.readInt());
      String file = text(in);
      WeatherSeries series = series(in);
      Scenario s =
          ScenarioReader.read(fileName, text, settings).withPlace(place).withWindow(window);
      ScenarioWeather weather = new ScenarioWeather(s, series, file, List.of());
      return new Recipe(kind, text, settings, weather, count, inSeason, plan);
    } catch (EOFException e) {
      throw new IOException("no recipe: it ends too early", e);
    } catch (IllegalArgumentException e) {
      throw new IOException("no recipe: " + e.getMessage(), e);
    }
  }

  private static void series(DataOutputStream out, WeatherSeries w) throws IOException {
    out.writeLong(w.startEpochS());
    out.writeInt(w.stepS());
    out.writeInt(w.n());
    byte[] filled = new byte[w.n()];
    for (Variable v : VARIABLES) {
      out.writeBoolean(w.has(v));
      if (w.has(v)) {
        out.writeBoolean(w.stand(v).mean());
        out.writeDouble(w.stand(v).offsetS());
        for (int i = 0; i < w.n(); i++) {
          out.writeDouble(w.value(v, i));
          filled[i] |= (byte) (w.quality(v, i) == Quality.FILLED ? 1 << v.ordinal() : 0);
        }
      }
    }
    block(out, filled);
    out.writeDouble(w.windHeightM());
    out.writeBoolean(w.place().isPresent());
    if (w.place().isPresent()) {
      place(out, w.place().get());
    }
    out.writeBoolean(w.coordinates().isPresent());
    if (w.coordinates().isPresent()) {
      out.writeDouble(w.coordinates().get().latitudeDeg());
      out.writeDouble(w.coordinates().get().longitudeDeg());
    }
    text(out, w.source());
    text(out, w.formatId());
    out.writeBoolean(w.typicalYear());
    texts(out, w.warnings());
  }

  private static WeatherSeries series(DataInputStream in) throws IOException {
    long startEpochS = in.readLong();
    int stepS = in.readInt();
    int n = length(in);
    WeatherSeries.Builder b = new WeatherSeries.Builder(startEpochS, stepS, n);
    for (Variable v : VARIABLES) {
      if (in.readBoolean()) {
        Stand stand = new Stand(in.readBoolean(), in.readDouble());
        double[] values = new double[n];
        for (int i = 0; i < n; i++) {
          values[i] = in.readDouble();
        }
        b.column(v, values, stand);
      }
    }
    b.filledBits(block(in));
    b.windHeightM(in.readDouble());
    b.place(in.readBoolean() ? Optional.of(place(in)) : Optional.empty());
    b.coordinates(
        in.readBoolean()
            ? Optional.of(new WeatherSeries.Coordinates(in.readDouble(), in.readDouble()))
            : Optional.empty());
    b.source(text(in)).formatId(text(in)).typicalYear(in.readBoolean()).warnings(texts(in));
    return b.build();
  }

  private static void place(DataOutputStream out, Place p) throws IOException {
    out.writeDouble(p.latitudeDeg());
    out.writeDouble(p.longitudeDeg());
    out.writeDouble(p.altitudeM());
  }

  private static Place place(DataInputStream in) throws IOException {
    return new Place(in.readDouble(), in.readDouble(), in.readDouble());
  }

  private static void texts(DataOutputStream out, List<String> texts) throws IOException {
    out.writeInt(texts.size());
    for (String text : texts) {
      text(out, text);
    }
  }

  private static List<String> texts(DataInputStream in) throws IOException {
    int count = length(in);
    List<String> texts = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      texts.add(text(in));
    }
    return texts;
  }

  private static void text(DataOutputStream out, String text) throws IOException {
    block(out, text.getBytes(StandardCharsets.UTF_8));
  }

  private static String text(DataInputStream in) throws IOException {
    return new String(block(in), StandardCharsets.UTF_8);
  }

  private static void block(DataOutputStream out, byte[] bytes) throws IOException {
    out.writeInt(bytes.length);
    out.write(bytes);
  }

  private static byte[] block(DataInputStream in) throws IOException {
    byte[] bytes = new byte[length(in)];
    in.readFully(bytes);
    return bytes;
  }

  /** A length that the rest can hold, so that a wrong one does not ask for all memory. */
  private static int length(DataInputStream in) throws IOException {
    int length = in.readInt();
    if (length < 0 || length > in.available()) {
      throw new IOException("no recipe: a length of " + length);
    }
    return length;
  }

  private static <T> T of(T[] values, int ordinal) throws IOException {
    if (ordinal < 0 || ordinal >= values.length) {
      throw new IOException("no recipe: choice " + ordinal);
    }
    return values[ordinal];
  }
}
