package org.broodbench.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.broodbench.card.CardMaker;
import org.broodbench.card.FieldCard;
import org.broodbench.card.Tonight;
import org.broodbench.input.BadInput;
import org.broodbench.input.OptionAmount;
import org.broodbench.input.Problem;
import org.broodbench.input.ScenarioWeather;
import org.broodbench.matter.Dimension;
import org.broodbench.output.CardJson;
import org.broodbench.output.CardPage;
import org.broodbench.output.CardText;
import org.broodbench.plant.Plant;
import org.broodbench.rig.Scenario;
import org.broodbench.sky.Forcing;
import org.broodbench.sky.WeatherSeries;
import org.broodbench.study.BatteryAlone;
import org.broodbench.study.Outlooks;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code card}: what to hang on the hive, and what tonight brings. */
@Command(
    name = "card",
    description =
        "Makes the field card of a rig (card.html and card.pdf), or tells what tonight brings.",
    mixinStandardHelpOptions = true,
    sortOptions = false)
final class CardCommand extends Verb {
  private static final int USUAL_DAYS = 28;

  @Mixin private ScenarioOptions scenario;

  @Option(
      names = "--days",
      paramLabel = "N",
      description =
          "Length of the season that the card is made from; 28 days, or as far as the weather reaches, when left out.")
  private Integer days;

  @Option(
      names = "--tonight",
      arity = "2",
      paramLabel = "VOLTS LOW",
      hideParamSyntax = true,
      description =
          "Battery volts at dusk with the heater off, and the night's lowest temperature (12.4 -5; or with units).")
  private List<String> tonight;

  @Option(
      names = "--plan",
      paramLabel = "WEEKS",
      description =
          "Add the plan of a season of so many weeks: battery alone, next box, weaning. Takes some seconds more.")
  private Integer plan;

  @Option(
      names = "--out",
      paramLabel = "DIR",
      description = "Folder for the card; broodbench-out/<scenario name> when left out.")
  private Path out;

  @Option(
      names = "--units",
      paramLabel = "C|F",
      defaultValue = "C",
      description = "Units on the screen: ${COMPLETION-CANDIDATES}. The card has both.")
  private RunCommand.Units units;

  @Option(names = "--json", description = "Print JSON on standard output and nothing else there.")
  private boolean json;

  CardCommand(Console console) {
    super(console);
  }

  @Override
  public Integer call() {
    List<Problem> problems = new ArrayList<>();
    if (days != null && (days < 2 || days > 366)) {
      problems.add(new Problem("--days", 0, 0, "", String.valueOf(days), "2 to 366", ""));
    }
    if (plan != null && (plan < 2 || plan > 26)) {
      problems.add(new Problem("--plan", 0, 0, "", String.valueOf(plan), "2 to 26 weeks", ""));
    }
    double volts = 0;
    double low = 0;
    if (tonight != null) {
      volts =
          OptionAmount.read(
              "--tonight VOLTS", tonight.get(0), Dimension.VOLTAGE, "V", 5, 64, problems);
      low =
          OptionAmount.read(
              "--tonight LOW", tonight.get(1), Dimension.TEMPERATURE, "degC", -50, 30, problems);
    }
    if (!problems.isEmpty()) {
      throw new BadInput(problems);
    }
    ScenarioWeather found = season();
    Scenario s = found.scenario();
    Path folder = out != null ? out : Path.of("broodbench-out", RunCommand.baseName(s.fileName()));
    if (tonight == null) {
      RunCommand.checkFolder(folder);
    }
    CardMaker maker;
    try {
      maker =
          new CardMaker(
              s,
              found.series(),
              (of, series) ->
                  new ScenarioWeather(of, series, found.file(), List.of())
                      .forcing(Plant.planes(of)));
    } catch (IllegalArgumentException e) {
      throw new BadInput(
          List.of(
              new Problem(
                  "--days",
                  0,
                  0,
                  "",
                  e.getMessage(),
                  "a window with whole nights inside the record",
                  "Choose another window with --from and --days.")));
    }
    if (tonight != null) {
      Tonight.Answer answer = maker.tonight(volts, low);
      console()
          .out()
          .print(json ? CardJson.of(answer) : CardText.of(answer, units == RunCommand.Units.F));
      return answer.wholeNight() ? 0 : 1;
    }
    FieldCard card = maker.card(found.series().source());
    if (plan != null) {
      card = card.withPlan(plan());
    }
    write(folder, card);
    if (json) {
      console().out().print(CardJson.of(card));
    } else {
      console().out().print(CardText.of(card, units == RunCommand.Units.F));
      console().out().println("Written: " + folder + " (card.html, card.pdf)");
    }
    return 0;
  }

  private FieldCard.Plan plan() {
    ScenarioWeather found = scenario.weather(scenario.read(7 * plan));
    Scenario season = Outlooks.season(found.scenario(), plan);
    int threads = Math.max(1, Runtime.getRuntime().availableProcessors());
    Forcing whole =
        new ScenarioWeather(season, found.series(), found.file(), List.of())
            .forcing(Plant.planes(season));
    BatteryAlone alone =
        BatteryAlone.of(
            found.scenario(),
            found.series(),
            s ->
                new ScenarioWeather(s, found.series(), found.file(), List.of())
                    .forcing(Plant.planes(s)),
            threads);
    return new FieldCard.Plan(Outlooks.of(season, whole, threads, (done, of) -> {}), alone);
  }

  /** The season: as long as asked for, else four weeks or as far as the record reaches. */
  private ScenarioWeather season() {
    if (days != null) {
      return scenario.weather(scenario.read(days));
    }
    Scenario usual = scenario.read(USUAL_DAYS);
    ScenarioWeather found = scenario.weather(usual);
    WeatherSeries series = found.series();
    long whole = (series.endEpochS() - usual.window().fromEpochS()) / 86_400;
    return series.typicalYear() || whole >= USUAL_DAYS
        ? found
        : scenario.weather(scenario.read((int) Math.max(2, whole)));
  }

  private static void write(Path folder, FieldCard card) {
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put("card.html", CardPage.html(card).getBytes(StandardCharsets.UTF_8));
    files.put("card.pdf", CardPage.pdf(card));
    Results.write(folder, files);
  }
}
