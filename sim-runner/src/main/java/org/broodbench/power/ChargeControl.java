package org.broodbench.power;

/**
 * Stages of charging: bulk until the absorption volts are reached; absorption until its time is up
 * or the current has fallen to the tail; float until the volts have stayed under the level that
 * starts over. Solar controller and mains charger follow the same stage. Source: the usual logic of
 * charge controllers' manuals.
 */
final class ChargeControl {
  /** How far under the set volts still counts as holding them, share; own choice. */
  private static final double HOLDING = 0.995;

  /** A charge of the stages. */
  enum Stage {
    /** All that the sources give. */
    BULK,
    /** Held at the absorption volts. */
    ABSORPTION,
    /** Held at the float volts. */
    FLOAT
  }

  private final ChargeProfile profile;
  private Stage stage = Stage.BULK;
  private double heldS;
  private double tailS;
  private double lowS;

  ChargeControl(ChargeProfile profile) {
    this.profile = profile;
  }

  Stage stage() {
    return stage;
  }

  /** Volts that charging must not pass now, V. */
  double highestV(double batteryC) {
    double at25 = stage == Stage.FLOAT ? profile.floatV() : profile.absorptionV();
    return at25 + profile.compensationVPerK() * (batteryC - 25);
  }

  /**
   * Moves over a step.
   *
   * @param volts at the bus, V
   * @param chargeA into the battery, A
   */
  void accept(double volts, double chargeA, double batteryC, double seconds) {
    boolean holding = volts >= HOLDING * highestV(batteryC);
    lowS = volts < profile.rebulkV() ? lowS + seconds : 0;
    switch (stage) {
      case BULK -> {
        if (holding) {
          enter(Stage.ABSORPTION);
        }
      }
      case ABSORPTION -> {
        if (holding) {
          heldS += seconds;
          tailS = chargeA <= profile.tailA() ? tailS + seconds : 0;
        } else {
          tailS = 0;
        }
        if (heldS >= profile.absorptionS() || tailS >= 60) {
          enter(Stage.FLOAT);
        } else if (lowS >= profile.rebulkDelayS()) {
          enter(Stage.BULK);
        }
      }
      case FLOAT -> {
        if (lowS >= profile.rebulkDelayS()) {
          enter(Stage.BULK);
        }
      }
      default -> throw new IllegalStateException("no such stage");
    }
  }

  private void enter(Stage next) {
    stage = next;
    heldS = 0;
    tailS = 0;
    lowS = 0;
  }
}
