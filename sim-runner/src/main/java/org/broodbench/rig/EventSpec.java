package org.broodbench.rig;

/** Something that happens during a run. All times in seconds since the start of the run. */
public sealed interface EventSpec {
  /** When it happens, s after the start of the run. */
  double atS();

  /**
   * A colony moves in.
   *
   * @param bees adults
   * @param broodCells cells with brood that come with them
   */
  record InstallColony(double atS, double bees, double broodCells) implements EventSpec {}

  /**
   * Feed is given.
   *
   * @param massKg mass, kg
   * @param waterShare share of water, 0 to 1
   * @param temperatureC temperature, °C
   */
  record Feed(double atS, double massKg, double waterShare, double temperatureC)
      implements EventSpec {}

  /**
   * The lid is off.
   *
   * @param durationS for how long, s
   */
  record OpenLid(double atS, double durationS) implements EventSpec {}

  /**
   * A box is put on top.
   *
   * @param heightM inside height, m
   * @param frames frames
   * @param storesKg stores in it, kg
   */
  record AddBox(double atS, double heightM, int frames, double storesKg) implements EventSpec {}

  /**
   * The upper vent is set.
   *
   * @param topVentM2 its new free area, m²
   */
  record ChangeVent(double atS, double topVentM2) implements EventSpec {}

  /**
   * Shore power comes or goes.
   *
   * @param present whether it is there from now on
   */
  record ShorePower(double atS, boolean present) implements EventSpec {}

  /**
   * The keeper sets another set point.
   *
   * @param setPointC the new set point, °C
   */
  record SetPoint(double atS, double setPointC) implements EventSpec {}

  /**
   * Something breaks.
   *
   * @param kind what breaks
   * @param durationS how long it stays broken, s; infinite to the end of the run
   * @param size offset in K, or the share that is left, as the kind says; not a number where the
   *     kind has none
   */
  record Fault(double atS, FaultKind kind, double durationS, double size) implements EventSpec {
    /** To the end of the run, of the usual size. */
    public Fault(double atS, FaultKind kind) {
      this(atS, kind, Double.POSITIVE_INFINITY, kind.usualSize());
    }
  }
}
