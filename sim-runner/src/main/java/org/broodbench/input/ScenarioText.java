package org.broodbench.input;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;

/** Reads a text along a registry: values, defaults, options on top, and all problems at once. */
final class ScenarioText {
  private ScenarioText() {}

  /**
   * What came out.
   *
   * @param values sound values; asking for an unsound one throws {@link Values.Unsound}
   * @param problems in no order yet, see {@link #sorted}
   */
  record Reading(Values values, List<Problem> problems) {}

  static Reading read(Keys keys, String file, String text, List<String> settings) {
    RawScenario raw = TomlSource.read(keys, file, text);
    List<Problem> problems = new ArrayList<>(raw.problems());
    Values values = new Values(keys);
    values.setTable("", new Spot(file, 0, 0));
    raw.tables().forEach(values::setTable);
    raw.rows().forEach(values::setRows);
    for (Map.Entry<String, RawScenario.Raw> entry : raw.values().entrySet()) {
      readOne(keys, values, problems, entry.getKey(), entry.getValue());
    }
    new Overrides(keys, values, problems).apply(settings);
    tooManyRows(keys, values, problems);
    for (String path : values.paths()) {
      checkPresence(keys.find(path).orElseThrow(), path, values, raw.damaged(), problems);
    }
    return new Reading(values, problems);
  }

  private static void readOne(
      Keys keys, Values values, List<Problem> problems, String path, RawScenario.Raw raw) {
    Key key = keys.find(path).orElseThrow();
    String found = ValueReader.found(raw.value());
    try {
      values.put(path, ValueReader.read(key, raw.value()), found, raw.place());
    } catch (ValueReader.Refused e) {
      values.markUnsound(path);
      problems.add(at(raw.place(), path, found, e.allowed(), e.hint()));
    }
  }

  private static void tooManyRows(Keys keys, Values values, List<Problem> problems) {
    for (Keys.Table table : keys.tables()) {
      if (!table.repeated() || table.path().contains("*")) {
        continue;
      }
      int count = values.rowCount(table.path());
      if (count > table.mostRows()) {
        Spot spot = values.tableSpot(table.path() + "." + table.mostRows() + ".x");
        problems.add(
            at(spot, table.path(), count + " rows", "at most " + table.mostRows() + " rows", ""));
      }
    }
  }

  private static void checkPresence(
      Key key, String path, Values values, boolean damaged, List<Problem> problems) {
    boolean given;
    try {
      given = values.has(path) && !values.isAssumed(path);
    } catch (Values.Unsound e) {
      given = false;
    }
    try {
      if (!values.applies(key, path)) {
        if (given) {
          problems.add(
              at(
                  values.spot(path),
                  path,
                  values.shown(path),
                  "only where " + key.onlyWhen() + " is " + String.join(" or ", key.onlyFor()),
                  ""));
        }
        return;
      }
    } catch (Values.Unsound e) {
      return;
    }
    boolean reported = problems.stream().anyMatch(p -> concerns(p, path));
    if (key.presence() == Key.Presence.REQUIRED && !given && !damaged && !reported) {
      problems.add(at(values.tableSpot(path), path, "nothing", whatIsAllowed(key), key.help()));
    }
  }

  /** A missing key is not reported again where its value or its misspelling already was. */
  private static boolean concerns(Problem problem, String path) {
    return problem.key().equals(path)
        || problem.hint().equals("did you mean " + path + "?")
        || (problem.hint().startsWith("did you mean ")
            && path.startsWith(
                problem.hint().substring("did you mean ".length()).replace("?", "") + "."));
  }

  private static String whatIsAllowed(Key key) {
    return switch (key.kind()) {
      case QUANTITY -> ValueReader.allowed(key);
      case CHOICE -> String.join(", ", key.choices());
      default -> key.kind().words() + (key.range().isEmpty() ? "" : ", " + key.range());
    };
  }

  private static Problem at(Spot spot, String key, String found, String allowed, String hint) {
    return new Problem(spot.file(), spot.line(), spot.column(), key, found, allowed, hint);
  }

  /** In the order of the file; those of options last. */
  static List<Problem> sorted(List<Problem> problems) {
    return problems.stream()
        .sorted(
            Comparator.comparing((Problem p) -> p.file().equals(Spot.OPTION))
                .thenComparingInt(Problem::line)
                .thenComparingInt(Problem::column))
        .toList();
  }
}
