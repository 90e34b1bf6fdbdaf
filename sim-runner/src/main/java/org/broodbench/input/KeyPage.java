package org.broodbench.input;

import java.util.stream.Collectors;

/** Writes the key tables of the documentation from the registry. */
final class KeyPage {
  private KeyPage() {}

  /** Markdown: one section a table, one row a key. */
  static String markdown(Keys keys) {
    StringBuilder out = new StringBuilder();
    top(keys, out);
    for (Keys.Table table : keys.tables()) {
      String inside = table.repeated() ? table.path() + ".*" : table.path();
      if (keys.all().stream().noneMatch(key -> key.table().equals(inside))) {
        continue;
      }
      String plain = table.path().replace(".*", "");
      out.append("\n### ")
          .append(table.repeated() ? "`[[" + plain + "]]`" : "`[" + plain + "]`")
          .append("\n\n")
          .append(table.help())
          .append("\n\n");
      rows(keys, inside, out);
    }
    return out.toString();
  }

  private static void top(Keys keys, StringBuilder out) {
    if (keys.all().stream().anyMatch(key -> key.table().isEmpty())) {
      out.append("### At the top of the file\n\n");
      rows(keys, "", out);
    }
  }

  private static void rows(Keys keys, String table, StringBuilder out) {
    out.append("| key | what | unit | allowed | default |\n| --- | --- | --- | --- | --- |\n");
    for (Key key : keys.all()) {
      if (key.table().equals(table)) {
        out.append("| `").append(key.name()).append("` | ").append(cell(key.help()));
        if (!key.onlyWhen().isEmpty()) {
          out.append(" (only where `")
              .append(key.onlyWhen())
              .append("` is ")
              .append(
                  key.onlyFor().stream().map(w -> "`" + w + "`").collect(Collectors.joining(", ")))
              .append(')');
        }
        out.append(" | ").append(cell(unit(key))).append(" | ").append(cell(allowed(key)));
        out.append(" | ").append(cell(whenLeftOut(key))).append(" |\n");
      }
    }
  }

  private static String unit(Key key) {
    return switch (key.kind()) {
      case QUANTITY -> key.shown().spelling().isEmpty() ? "share" : key.shown().spelling();
      case INTEGER -> "whole number";
      case NUMBER -> "number";
      case TEXT -> "text";
      case CHOICE -> "word";
      case BOOLEAN -> "true, false";
      case DATE -> "date";
      case MOMENT -> "time";
    };
  }

  private static String allowed(Key key) {
    return key.choices().isEmpty()
        ? key.range()
        : key.choices().stream().map(w -> "`" + w + "`").collect(Collectors.joining(", "));
  }

  private static String whenLeftOut(Key key) {
    return switch (key.presence()) {
      case REQUIRED -> "**required**";
      case DEFAULTED, OPTIONAL -> key.defaultWords();
    };
  }

  private static String cell(String text) {
    return text.replace("|", "\\|");
  }
}
