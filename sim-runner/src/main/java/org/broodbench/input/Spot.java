package org.broodbench.input;

/**
 * Where something stands in the input.
 *
 * @param file name as the user gave it, or the option ("--set")
 * @param line first is 1; 0 where it is not known
 * @param column first is 1; 0 where it is not known
 */
public record Spot(String file, int line, int column) {
  /** Name that stands for a file where a value came from the command line. */
  public static final String OPTION = "--set";

  /** "line 9", or what else is known of the place. */
  public String words() {
    return line > 0 ? "line " + line : file;
  }
}
