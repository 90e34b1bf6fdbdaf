package org.broodbench.recipe;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.broodbench.sky.Place;
import org.broodbench.sky.Stand;
import org.broodbench.sky.Variable;
import org.broodbench.sky.WeatherSeries;
import org.broodbench.stress.StressPlan;
import org.junit.jupiter.api.Test;

class RecipeBytesTest {
  /** A record with everything that a record can have. */
  private static WeatherSeries record() {
    int n = 24 * 60;
    SplittableRandom random = new SplittableRandom(5);
    WeatherSeries.Builder b = new WeatherSeries.Builder(1_800_000_000L, 3600, n);
    double[] air = random.doubles(n, -20, 30).toArray();
    air[7] = Double.NaN;
    air[8] = -0.0;
    air[9] = Math.nextUp(1.0);
    byte[] filled = new byte[n];
    filled[3] = (byte) (1 << Variable.AIR.ordinal() | 1 << Variable.PRESSURE.ordinal());
    filled[4] = (byte) (1 << Variable.PRESSURE.ordinal());
    return b.column(Variable.AIR, air, Stand.instant(1800))
        .column(Variable.GHI, random.doubles(n, 0, 900).toArray(), Stand.MEAN)
        .column(Variable.PRESSURE, random.doubles(n, 9e4, 1e5).toArray(), new Stand(true, 60))
        .filledBits(filled)
        .windHeightM(2)
        .place(Optional.of(new Place(52.1, 5.18, 1.9)))
        .source("a record, measured")
        .formatId("own")
        .typicalYear(true)
        .warnings(List.of("one", "two: ö"))
        .build();
  }

  @Test
  void everythingComesBackBitForBit() throws IOException {
    WeatherSeries record = record();
    List<String> settings = List.of("heater.power=40 W", "run.seed=9");
    Recipe sent =
        new Recipe(
            Recipe.Kind.STRESS,
            SmallRecipes.demo(),
            settings,
            SmallRecipes.weather(record, "my record.csv", 9, settings),
            17,
            true,
            new StressPlan(true, List.of("relay_open+lid_off", "fan_jammed+toppled"), true));
    Recipe read = RecipeBytes.read(RecipeBytes.of(sent));
    assertEquals(sent.kind(), read.kind());
    assertArrayEquals(sent.text(), read.text());
    assertEquals(sent.settings(), read.settings());
    assertEquals(sent.count(), read.count());
    assertEquals(sent.inSeason(), read.inSeason());
    assertEquals(sent.plan(), read.plan());
    assertEquals(sent.rebuilt(List.of()), read.weather().scenario());
    assertEquals("my record.csv", read.weather().file());
    WeatherSeries came = read.weather().series();
    for (Variable v : Variable.values()) {
      assertEquals(record.has(v), came.has(v), v.name());
      assertEquals(record.stand(v), came.stand(v), v.name());
      for (int i = 0; i < record.n(); i++) {
        long bits = Double.doubleToRawLongBits(record.value(v, i));
        assertEquals(bits, Double.doubleToRawLongBits(came.value(v, i)));
        assertEquals(record.quality(v, i), came.quality(v, i));
      }
    }
    assertEquals(record.startEpochS(), came.startEpochS());
    assertEquals(record.stepS(), came.stepS());
    assertEquals(record.windHeightM(), came.windHeightM());
    assertEquals(record.place(), came.place());
    assertEquals(record.coordinates(), came.coordinates());
    assertEquals(record.source(), came.source());
    assertEquals(record.formatId(), came.formatId());
    assertEquals(record.typicalYear(), came.typicalYear());
    assertEquals(record.warnings(), came.warnings());
    assertEquals(record.filledHours(), came.filledHours());
  }

  @Test
  void aScenarioThatDoesNotFollowFromItsTextIsRefused() {
    Recipe r = SmallRecipes.sure();
    List<String> other = List.of("run.seed=4");
    assertThrows(
        IllegalArgumentException.class,
        () -> new Recipe(r.kind(), r.text(), other, r.weather(), r.count()));
  }

  @Test
  void cutAndChangedBytesAreRefusedAndNotBelieved() {
    byte[] whole = RecipeBytes.of(SmallRecipes.sure());
    for (int length = 0; length < whole.length; length += 997) {
      byte[] cut = Arrays.copyOf(whole, length);
      assertThrows(IOException.class, () -> RecipeBytes.read(cut));
    }
    assertThrows(IOException.class, () -> RecipeBytes.read("no recipe".getBytes()));
  }
}
