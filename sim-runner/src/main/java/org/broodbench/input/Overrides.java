package org.broodbench.input;

import java.util.List;
import java.util.Optional;

/** Applies {@code --set KEY=VALUE} on top of what a file says; the last one of a key wins. */
final class Overrides {
  private static final Spot OPTION = new Spot(Spot.OPTION, 0, 0);

  private final Keys keys;
  private final Values values;
  private final List<Problem> problems;

  Overrides(Keys keys, Values values, List<Problem> problems) {
    this.keys = keys;
    this.values = values;
    this.problems = problems;
  }

  void apply(List<String> settings) {
    for (String setting : settings) {
      int equals = setting.indexOf('=');
      if (equals <= 0) {
        problems.add(problem("", setting, "KEY=VALUE", "Example: --set heater.power=60W"));
        continue;
      }
      apply(setting.substring(0, equals).strip(), setting.substring(equals + 1).strip());
    }
  }

  private void apply(String path, String text) {
    Optional<Key> key = keys.find(path);
    if (key.isEmpty()) {
      problems.add(
          keys.table(path).isPresent()
              ? problem(
                  path, "a table", "a key", "Known in it: " + String.join(", ", keys.names(path)))
              : Strangers.problem(keys, path, false, OPTION));
      return;
    }
    if (!openRows(path)) {
      return;
    }
    String bare = text.replaceAll("^\"(.*)\"$|^'(.*)'$", "$1$2");
    try {
      values.put(path, ValueReader.readText(key.get(), bare), bare, OPTION);
    } catch (ValueReader.Refused e) {
      values.markUnsound(path);
      problems.add(problem(path, ValueReader.found(bare), e.allowed(), e.hint()));
    }
  }

  /** A row that is there may be changed, and the next one begun. */
  private boolean openRows(String path) {
    String[] parts = path.split("\\.");
    StringBuilder table = new StringBuilder();
    for (String part : parts) {
      String outer = table.toString();
      if (part.matches("\\d+") && keys.table(outer).map(Keys.Table::repeated).orElse(false)) {
        int count = values.rowCount(outer);
        int row = part.length() > 6 ? Integer.MAX_VALUE : Integer.parseInt(part);
        if (row > count) {
          problems.add(
              problem(
                  path,
                  "row " + part,
                  "row 0 to " + count,
                  "Rows are counted from 0; " + outer + " has " + count + "."));
          return false;
        }
        if (row == count) {
          values.setRows(outer, count + 1);
        }
      }
      table.append(table.length() == 0 ? "" : ".").append(part);
    }
    return true;
  }

  private static Problem problem(String key, String found, String allowed, String hint) {
    return new Problem(Spot.OPTION, 0, 0, key, found, allowed, hint);
  }
}
