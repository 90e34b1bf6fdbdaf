package org.broodbench.input.weather;

import java.io.InputStream;
import org.broodbench.sky.WeatherSeries;

/** A layout in JSON, read from the bytes. */
interface JsonFormat extends WeatherFormat {
  /** Reads a whole file. */
  WeatherSeries read(InputStream in, ReadContext context);

  @Override
  default WeatherSeries read(LineSource lines, ReadContext context) {
    throw new IllegalStateException("JSON is read from bytes");
  }
}
