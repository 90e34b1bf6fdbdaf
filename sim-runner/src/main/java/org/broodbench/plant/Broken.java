package org.broodbench.plant;

import java.util.Arrays;

/** What is broken between panel, relay, element and fan. */
public final class Broken {
  /** Share of the light that reaches each module group, 0 to 1. */
  public final double[] lightShare;

  /** The heater relay is closed for good. */
  public boolean relayWelded;

  /** Share of the heater's element that still carries current, 0 to 1. */
  public double elementShare = 1;

  /** The fan takes its power and moves no air. */
  public boolean fanJammed;

  Broken(int groups) {
    lightShare = new double[groups];
    Arrays.fill(lightShare, 1);
  }
}
