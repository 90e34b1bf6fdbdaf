package org.broodbench.input;

import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import org.broodbench.matter.Dimension;
import org.broodbench.rig.RunSpec;
import org.broodbench.rig.WeatherChoice;
import org.broodbench.rig.Window;
import org.broodbench.sky.Climate;
import org.broodbench.sky.GeneratorSettings;
import org.broodbench.sky.Place;

/** Keys of the run itself, the place and the weather. */
final class SiteKeys {
  private SiteKeys() {}

  static void declare(Keys.Builder keys) {
    keys.plain("title", Kind.TEXT).byDefault("untitled").help("Name of the case in every result.");

    keys.table("run", "What is simulated, and how finely.");
    keys.plain("run.from", Kind.DATE).help("First day, UTC.");
    keys.plain("run.days", Kind.INTEGER).between("1", "3660").byDefault("14").help("Whole days.");
    keys.plain("run.seed", Kind.INTEGER)
        .between("0", "9007199254740991")
        .byDefault("1")
        .help("Seed of the noise of all probes.");
    keys.quantity("run.step", "s", Dimension.TIME)
        .between("1 s", "60 s")
        .byDefault("10 s")
        .help("Longest step of the simulated hive and power.");
    keys.quantity("run.trace_interval", "s", Dimension.TIME)
        .between("10 s", "1 h")
        .byDefault("60 s")
        .help("Time between rows of the trace; a multiple of 10 s.");
    // 32 to 36 degrees: the range that colonies with brood hold (Stabentheiner et al. 2010, 2021)
    keys.quantity("run.band_low", "degC", Dimension.TEMPERATURE)
        .between("10 degC", "38 degC")
        .byDefault("32 degC")
        .help("Lower end of the band that counts as good for brood.");
    keys.quantity("run.band_high", "degC", Dimension.TEMPERATURE)
        .between("10 degC", "42 degC")
        .byDefault("36 degC")
        .help("Upper end of that band.");
    keys.quantity("run.visit_every", "h", Dimension.TIME)
        .between("1 h", "30 d")
        .byDefault("24 h")
        .help("How often the keeper comes and reads the gauges.");

    keys.table("site", "Where the hive stands.");
    keys.quantity("site.latitude", "N", Dimension.LATITUDE)
        .between("90 S", "90 N")
        .help("Latitude; S or a minus for the south.");
    keys.quantity("site.longitude", "E", Dimension.LONGITUDE)
        .between("180 W", "180 E")
        .help("Longitude; W or a minus for the west.");
    keys.quantity("site.altitude", "m", Dimension.LENGTH)
        .between("-400 m", "5000 m")
        .byDefault("200 m")
        .help("Height above the sea.");
    // physics texts: bare ground 0.2, fresh snow 0.6 to 0.8
    keys.quantity("site.ground_albedo", "", Dimension.RATIO)
        .between("0", "0.9")
        .byDefault("0.2")
        .help("Share of sunlight that the ground sends back: bare 0.2, snow 0.6 to 0.8.");

    keys.table("weather", "The weather that is replayed.");
    keys.plain("weather.file", Kind.TEXT)
        .byDefault("")
        .help("Weather file beside the scenario; left out, the generator makes the weather.");
    keys.choice(
            "weather.climate",
            Arrays.stream(Climate.values()).map(Climate::word).toArray(String[]::new))
        .byDefault("upland")
        .help("Invented climate that the generator makes the weather from.");
    keys.plain("weather.spell_from_day", Kind.INTEGER)
        .between("0", "3660")
        .byDefault("4")
        .help("Day of the run, counted from 0, on which a cold, dark spell is put on top.");
    keys.plain("weather.spell_days", Kind.INTEGER)
        .between("0", "60")
        .byDefault("4")
        .help("How many days that spell lasts; 0 for none.");
    keys.quantity("weather.spell_colder", "K", Dimension.TEMPERATURE_DIFFERENCE)
        .between("0 K", "20 K")
        .byDefault("6 K")
        .help("By how much its days are colder than chance alone makes them.");
    keys.plain("weather.generator_seed", Kind.INTEGER)
        .between("0", "9007199254740991")
        .byDefault("1")
        .help("Seed of generated weather.");
    keys.quantity("weather.longest_gap", "h", Dimension.TIME)
        .between("0 h", "48 h")
        .byDefault("3 h")
        .help("Longest gap in the file that is filled.");
  }

  static Window window(Values v) {
    long fromEpochS = v.date("run.from").atStartOfDay().toEpochSecond(ZoneOffset.UTC);
    return new Window(fromEpochS, (int) v.integer("run.days"));
  }

  static Place place(Values v) {
    return new Place(
        v.number("site.latitude"), v.number("site.longitude"), v.number("site.altitude"));
  }

  static WeatherChoice weather(Values v) {
    return new WeatherChoice(
        v.text("weather.file"),
        Climate.of(v.text("weather.climate")),
        new GeneratorSettings.Spell(
            (int) v.integer("weather.spell_from_day"),
            (int) v.integer("weather.spell_days"),
            v.number("weather.spell_colder")),
        v.integer("weather.generator_seed"),
        v.number("weather.longest_gap") / 3600,
        WeatherFileKeys.bridges(v),
        WeatherFileKeys.harder(v),
        WeatherFileKeys.mapping(v),
        v.number("site.ground_albedo"),
        HorizonKeys.horizon(v),
        HorizonKeys.diffuseSky(v));
  }

  static RunSpec run(Values v) {
    return new RunSpec(
        v.integer("run.seed"),
        v.number("run.step"),
        (int) Math.rint(v.number("run.trace_interval")),
        v.number("run.band_low"),
        v.number("run.band_high"),
        v.number("run.visit_every"));
  }

  static void check(Values v, Checks checks) {
    checks.run(
        () -> {
          double rows = v.number("run.trace_interval") / 10;
          if (Math.abs(rows - Math.rint(rows)) > 1e-9) {
            checks.refuse("run.trace_interval", List.of(), "a multiple of 10 s", "");
          }
        });
    checks.run(
        () -> {
          if (v.number("run.band_low") >= v.number("run.band_high")) {
            checks.refuse(
                "run.band_low",
                List.of("run.band_high"),
                "below run.band_high = "
                    + v.shown("run.band_high")
                    + " ("
                    + v.whence("run.band_high")
                    + ")",
                "");
          }
        });
  }
}
