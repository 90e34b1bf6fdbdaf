package org.broodbench.input.weather;

import org.broodbench.sky.WeatherSeries;

/** One layout of weather files. */
interface WeatherFormat {
  /** Short name, as in results. */
  String id();

  /** What the layout is called in messages. */
  String title();

  /** True where the first lines of a file are of this layout. */
  boolean recognises(Head head);

  /** Reads a whole file; what is wrong goes to the problems. */
  WeatherSeries read(LineSource lines, ReadContext context);
}
