package org.broodbench.output;

import org.broodbench.calibrate.Calibration;

/** What a log says, as a page. */
public final class CalibrationPage {
  private CalibrationPage() {}

  /** The whole page. */
  public static String html(Calibration c) {
    return "<pre>" + Markup.text(CalibrationText.of(c)) + "</pre>";
  }
}
