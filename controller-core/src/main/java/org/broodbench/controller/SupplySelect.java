package org.broodbench.controller;

/**
 * Battery or shore (rules S1 to S9): break before make with the heater opened first, a dead time, a
 * minimum dwell, a preference. Where nothing is to be selected it only says what feeds the loads.
 */
final class SupplySelect implements Part {
  /** Nothing feeds the loads. */
  static final int NONE = 0;

  static final int BATTERY = 1;
  static final int SHORE = 2;

  private final boolean fitted;
  private final boolean batteryFitted;
  private final boolean preferBattery;
  private final int deadMillis;
  private final int dwellMillis;

  private int source;
  private int target;
  private int deadRemainingMillis;
  private int dwellRemainingMillis;

  /** Source of the step before; of this step only. */
  private int before;

  SupplySelect(Settings settings) {
    fitted = settings.is(Setting.FITTED_SUPPLY_SELECT);
    batteryFitted = settings.is(Setting.FITTED_BATTERY);
    preferBattery = settings.is(Setting.SUPPLY_PREFER_BATTERY);
    deadMillis = settings.get(Setting.SUPPLY_DEAD_MILLIS);
    dwellMillis = settings.get(Setting.SUPPLY_DWELL_MILLIS);
  }

  /**
   * @param batteryAbsent the battery reads as not there
   * @param level shed level of the battery
   * @param heaterWasOn whether the heater is still closed from the step before
   */
  void step(
      int releaseMillis,
      boolean batteryAbsent,
      boolean shorePresent,
      int level,
      boolean heaterWasOn) {
    before = source;
    boolean batteryThere = batteryFitted && !batteryAbsent;
    if (!fitted) {
      source = batteryThere ? BATTERY : shorePresent && !batteryFitted ? SHORE : NONE;
      target = source;
      return;
    }
    deadRemainingMillis = Span.down(deadRemainingMillis, releaseMillis);
    dwellRemainingMillis = Span.down(dwellRemainingMillis, releaseMillis);
    int best = best(batteryThere, shorePresent, level);
    boolean lost = (source == BATTERY && !batteryThere) || (source == SHORE && !shorePresent);
    if (source == NONE) {
      target = best;
      if (deadRemainingMillis == 0 && best != NONE) {
        source = best;
        dwellRemainingMillis = dwellMillis;
      }
    } else if (lost) {
      open(best);
    } else if (target != source) {
      // The heater was told to open in the step that decided; it is open before the source goes.
      if (best == source) {
        target = source;
      } else if (!heaterWasOn) {
        open(best);
      }
    } else if (best != source && dwellRemainingMillis == 0) {
      target = best;
    }
  }

  private void open(int next) {
    source = NONE;
    target = next;
    deadRemainingMillis = deadMillis;
    dwellRemainingMillis = 0;
  }

  private int best(boolean batteryThere, boolean shorePresent, int level) {
    if (!batteryThere) {
      return shorePresent ? SHORE : NONE;
    }
    if (!shorePresent) {
      return BATTERY;
    }
    return preferBattery && level < ShedLevel.HEAT_SHED ? BATTERY : SHORE;
  }

  /** What feeds the loads now. */
  int source() {
    return source;
  }

  /** Loads may be fed: the source was closed before this step and no transfer is on its way. */
  boolean steady() {
    return source != NONE && source == before && target == source;
  }

  @Override
  public void reset() {
    source = NONE;
    target = NONE;
    deadRemainingMillis = deadMillis;
    dwellRemainingMillis = 0;
  }

  @Override
  public void save(Words out) {
    out.put(source);
    out.put(target);
    out.put(deadRemainingMillis);
    out.put(dwellRemainingMillis);
  }

  @Override
  public void restore(Words in) {
    source = in.take(NONE, SHORE);
    target = in.take(NONE, SHORE);
    deadRemainingMillis = in.takeMillis();
    dwellRemainingMillis = in.takeMillis();
  }
}
