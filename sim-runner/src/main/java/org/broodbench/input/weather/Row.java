package org.broodbench.input.weather;

/** Fields of one row of a table, from text or from JSON. */
interface Row {
  /** Number of fields. */
  int count();

  /** Position in the line where the field starts, the first is 1; 0 where that means nothing. */
  int column(int field);

  boolean isEmpty(int field);

  String text(int field);

  /** True where the field holds exactly these characters. */
  boolean is(int field, String text);

  /** The number in the field, NaN where it is none. */
  double number(int field);
}
