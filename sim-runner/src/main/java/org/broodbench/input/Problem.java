package org.broodbench.input;

/**
 * One thing that is wrong with an input, as fields rather than text alone.
 *
 * @param file name of the file as the user gave it, or the option ("--set"), never an absolute path
 *     that the user did not write
 * @param line first line is 1; 0 where the place is not known or the whole file is meant
 * @param column first column is 1; 0 where it is not known
 * @param key dotted key, column name or option; empty where none applies
 * @param found what stands there
 * @param allowed what may stand there
 * @param hint what to do about it; may be empty
 */
public record Problem(
    String file, int line, int column, String key, String found, String allowed, String hint) {
  private static final int LONGEST_FOUND = 300;
  private static final int LONGEST_ADVICE = 3000;

  /** Keeps what came from a file to a length that is read, and to letters that can be shown. */
  public Problem {
    key = shown(key, LONGEST_FOUND);
    found = shown(found, LONGEST_FOUND);
    allowed = shown(allowed, LONGEST_ADVICE);
    hint = shown(hint, LONGEST_ADVICE);
  }

  private static String shown(String text, int longest) {
    StringBuilder b = new StringBuilder();
    for (int i = 0; i < text.length(); i++) {
      if (b.length() == longest) {
        return b + "...";
      }
      char c = text.charAt(i);
      b.append(Character.isISOControl(c) && c != '\n' ? '?' : c);
    }
    return b.toString();
  }
}
