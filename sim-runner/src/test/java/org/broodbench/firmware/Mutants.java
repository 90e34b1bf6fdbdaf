package org.broodbench.firmware;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Mistakes made mechanically in C sources: comparisons, signs, constants, connectives, guards,
 * statements, and things that are easily mixed up.
 */
final class Mutants {
  /**
   * One mistake.
   *
   * @param file name of the source file
   * @param line first line is 1
   * @param kind what was done
   * @param text the whole file with the mistake in it
   * @param shown the line with the mistake in it; of a statement that is gone, what it was
   */
  record Mutant(String file, int line, String kind, String text, String shown) {
    /** What tells the mistake from others, without the number of its line. */
    String key() {
      return file + " | " + shown;
    }

    @Override
    public String toString() {
      return file + ":" + line + " " + kind + ": " + shown;
    }
  }

  private static final List<String[]> TOKENS =
      List.of(
          new String[] {"comparison", " >= ", " > "},
          new String[] {"comparison", " <= ", " < "},
          new String[] {"comparison", " > ", " >= "},
          new String[] {"comparison", " < ", " <= "},
          new String[] {"comparison", " >= ", " <= "},
          new String[] {"comparison", " <= ", " >= "},
          new String[] {"comparison", " == ", " != "},
          new String[] {"comparison", " != ", " == "},
          new String[] {"sign", " - ", " + "},
          new String[] {"sign", " + ", " - "},
          new String[] {"sign", " += ", " -= "},
          new String[] {"sign", " -= ", " += "},
          new String[] {"connective", " && ", " || "},
          new String[] {"connective", " || ", " && "},
          new String[] {"negation", "!", ""},
          new String[] {"constant", " = 0;", " = 1;"},
          new String[] {"constant", " = 1;", " = 0;"},
          new String[] {"constant", " 0)", " 1)"},
          new String[] {"constant", "1000", "1024"},
          new String[] {"constant", "60000", "60001"},
          new String[] {"constant", " 2 *", " 1 *"},
          new String[] {"constant", "return 0;", "return 1;"},
          new String[] {"constant", "return 1;", "return 0;"},
          new String[] {"constant", "delay *= 2", "delay *= 3"},
          new String[] {"constant", "INT32_MAX", "(UINT32_MAX - 1)"},
          new String[] {"mixed up", "trip_millis", "release_millis"},
          new String[] {"mixed up", "release_millis", "trip_millis"},
          new String[] {"mixed up", "call_centi_c", "stop_centi_c"},
          new String[] {"mixed up", "stop_centi_c", "call_centi_c"},
          new String[] {"mixed up", "brood_a", "brood_b"},
          new String[] {"mixed up", "BB_BROOD_A", "BB_BROOD_B"},
          new String[] {"mixed up", "BB_BROOD_B]", "BB_BROOD_A]"},
          new String[] {"mixed up", "BB_PAN]", "BB_TOP]"},
          new String[] {"mixed up", "BB_OUTDOOR]", "BB_TOP]"},
          new String[] {"mixed up", "ENTER_", "LEAVE_"},
          new String[] {"mixed up", "LEAVE_", "ENTER_"},
          new String[] {"mixed up", "MIN_ON_", "MIN_OFF_"},
          new String[] {"mixed up", "MIN_OFF_", "MIN_ON_"},
          new String[] {"mixed up", "min_on_remaining", "min_off_remaining"},
          new String[] {"mixed up", "->trusted", "->usable"},
          new String[] {"mixed up", "->usable", "->trusted"},
          new String[] {"mixed up", "->raw", "->value"},
          new String[] {"mixed up", "->value", "->raw"},
          new String[] {"mixed up", "HEAT_SHED", "FAN_SHED"},
          new String[] {"mixed up", "BB_LEVEL_SURVIVAL", "BB_LEVEL_HEAT_SHED"},
          new String[] {"mixed up", "LIMIT_PAN_TRIP_CENTI_C", "LIMIT_PAN_CENTI_C"},
          new String[] {"mixed up", "BB_HOUR_MILLIS", "BB_DAY_MILLIS"},
          new String[] {"mixed up", "BB_DAY_MILLIS", "BB_HOUR_MILLIS"},
          new String[] {
            "subtraction", "now_millis - t->last_millis", "t->last_millis - now_millis"
          },
          new String[] {
            "subtraction",
            "now_millis - t->last_millis",
            "(now_millis >> 1) - (t->last_millis >> 1)"
          });

  /** Kind, a whole line, and what becomes of it. */
  private static final List<String[]> LINES =
      List.of(
          new String[] {"guard", "^(\\s+)if \\((.*)\\) \\{(.*)$", "$1if (0 && ($2)) {$3"},
          new String[] {"guard", "^(\\s+)if \\((.*)\\) \\{(.*)$", "$1if (1 || ($2)) {$3"},
          new String[] {
            "guard", "^(\\s+)\\} else if \\((.*)\\) \\{(.*)$", "$1} else if (0 && ($2)) {$3"
          },
          new String[] {"statement", "^(\\s+)[\\w>.\\[\\]-]+ [-+|^]?= [^=].*;(.*)$", "$1;$2"},
          new String[] {"statement", "^(\\s+)[a-z_]+\\(.*\\);(.*)$", "$1;$2"});

  private Mutants() {}

  /**
   * Every mistake in one file. State words and power-up values are left out: they are compared word
   * for word elsewhere.
   */
  static List<Mutant> of(String file, String source) {
    List<Mutant> all = new ArrayList<>();
    String[] lines = source.split("\n", -1);
    boolean comment = false;
    boolean words = false;
    for (int i = 0; i < lines.length; i++) {
      String line = lines[i];
      comment |= line.strip().startsWith("/*");
      words |=
          line.matches(
              "(void|static void|static uint32_t) (bb_\\w*words?|walk|check|reset|bb_\\w+_reset"
                  + "|bb_word_\\w+|bb_controller_init)\\(.*");
      if (!comment && !words && !line.startsWith("#") && !line.isBlank()) {
        mistakes(all, file, lines, i);
      }
      comment &= !line.contains("*/");
      words &= !line.startsWith("}");
    }
    return all;
  }

  private static void mistakes(List<Mutant> all, String file, String[] lines, int i) {
    int end = lines[i].indexOf("/*");
    String code = end < 0 ? lines[i] : lines[i].substring(0, end);
    String rest = end < 0 ? "" : lines[i].substring(end);
    boolean declaration =
        !code.startsWith(" ") || code.matches("\\s+(bb_\\w+|int32_t|const .*) \\*?\\w+[,)].*");
    for (String[] token : TOKENS) {
      if (declaration) {
        continue;
      }
      for (int at = code.indexOf(token[1]); at >= 0; at = code.indexOf(token[1], at + 1)) {
        if (token[1].equals("!") && code.startsWith("!=", at)) {
          continue;
        }
        boolean within =
            Character.isLetter(token[1].charAt(0))
                && (at > 0 && Character.isLetterOrDigit(code.charAt(at - 1)));
        if (within) {
          continue;
        }
        String changed = code.substring(0, at) + token[2] + code.substring(at + token[1].length());
        add(all, file, lines, i, token[0], changed + rest);
      }
    }
    if (declaration) {
      return;
    }
    for (String[] rule : LINES) {
      Matcher matcher = Pattern.compile(rule[1]).matcher(code);
      if (matcher.find()) {
        add(all, file, lines, i, rule[0], matcher.replaceFirst(rule[2]) + rest);
      }
    }
  }

  private static void add(
      List<Mutant> all, String file, String[] lines, int i, String kind, String changed) {
    String[] copy = lines.clone();
    copy[i] = changed;
    String shown = changed.strip().startsWith(";") ? "gone: " + lines[i].strip() : changed.strip();
    all.add(new Mutant(file, i + 1, kind, String.join("\n", copy), shown));
  }
}
