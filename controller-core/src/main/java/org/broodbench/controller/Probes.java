package org.broodbench.controller;

/**
 * Every judged reading of the rig (section 2 of SPEC.md); one that is not fitted stays untrusted.
 */
final class Probes implements Part {
  private static final int MOST_MILLI_A = 200000;
  private static final int MOST_MILLI_W = 10000000;
  private static final int MOST_PERMILLE = 1000;

  final SampleJudge broodA;
  final SampleJudge broodB;
  final SampleJudge pan;
  final SampleJudge top;
  final SampleJudge outdoor;
  final SampleJudge humidity;
  final SampleJudge volts;
  final SampleJudge batteryCurrent;
  final SampleJudge stateOfCharge;
  final SampleJudge heaterCurrent;
  final SampleJudge panelPower;
  final StuckWatch stuck;

  final boolean broodAFitted;
  final boolean broodBFitted;
  final boolean panFitted;
  final boolean outdoorFitted;
  final boolean batteryFitted;
  private final boolean topFitted;
  private final boolean humidityFitted;
  private final boolean batteryCurrentFitted;
  private final boolean stateOfChargeFitted;
  private final boolean heaterCurrentFitted;
  private final boolean panelPowerFitted;

  Probes(Settings settings) {
    broodAFitted = settings.is(Setting.FITTED_BROOD_A);
    broodBFitted = settings.is(Setting.FITTED_BROOD_B);
    panFitted = settings.is(Setting.FITTED_PAN);
    topFitted = settings.is(Setting.FITTED_TOP);
    outdoorFitted = settings.is(Setting.FITTED_OUTDOOR);
    humidityFitted = settings.is(Setting.FITTED_HUMIDITY);
    batteryFitted = settings.is(Setting.FITTED_BATTERY);
    batteryCurrentFitted = settings.is(Setting.FITTED_BATTERY_CURRENT);
    stateOfChargeFitted = settings.is(Setting.FITTED_STATE_OF_CHARGE);
    heaterCurrentFitted = settings.is(Setting.FITTED_HEATER_CURRENT);
    panelPowerFitted = settings.is(Setting.FITTED_PANEL_POWER);
    broodA = SampleJudge.temperature(settings);
    broodB = SampleJudge.temperature(settings);
    pan = SampleJudge.temperature(settings);
    top = SampleJudge.temperature(settings);
    outdoor = SampleJudge.temperature(settings);
    humidity = SampleJudge.ranged(0, MOST_PERMILLE, settings);
    volts =
        SampleJudge.ranged(
            settings.get(Setting.BATTERY_LOWEST_MILLI_V),
            settings.get(Setting.BATTERY_HIGHEST_MILLI_V),
            settings);
    batteryCurrent = SampleJudge.ranged(-MOST_MILLI_A, MOST_MILLI_A, settings);
    stateOfCharge = SampleJudge.ranged(0, MOST_PERMILLE, settings);
    heaterCurrent = SampleJudge.ranged(-MOST_MILLI_A, MOST_MILLI_A, settings);
    panelPower = SampleJudge.ranged(0, MOST_MILLI_W, settings);
    stuck =
        new StuckWatch(
            new SampleJudge[] {broodA, broodB, pan, top, outdoor},
            settings.get(Setting.TRUST_STUCK_MILLIS),
            settings.get(Setting.TRUST_STUCK_OTHER_CENTI_K));
  }

  void step(Readings in, int tripMillis, int releaseMillis) {
    judge(broodAFitted, broodA, in.broodA, tripMillis, releaseMillis);
    judge(broodBFitted, broodB, in.broodB, tripMillis, releaseMillis);
    judge(panFitted, pan, in.pan, tripMillis, releaseMillis);
    judge(topFitted, top, in.top, tripMillis, releaseMillis);
    judge(outdoorFitted, outdoor, in.outdoor, tripMillis, releaseMillis);
    judge(humidityFitted, humidity, in.humidity, tripMillis, releaseMillis);
    judge(batteryFitted, volts, in.battery, tripMillis, releaseMillis);
    judge(batteryCurrentFitted, batteryCurrent, in.batteryCurrent, tripMillis, releaseMillis);
    judge(stateOfChargeFitted, stateOfCharge, in.stateOfCharge, tripMillis, releaseMillis);
    judge(heaterCurrentFitted, heaterCurrent, in.heaterCurrent, tripMillis, releaseMillis);
    judge(panelPowerFitted, panelPower, in.panelPower, tripMillis, releaseMillis);
    stuck.step(tripMillis);
  }

  private static void judge(
      boolean fitted, SampleJudge judge, Sample sample, int tripMillis, int releaseMillis) {
    if (fitted) {
      judge.step(sample, tripMillis, releaseMillis);
    }
  }

  @Override
  public void reset() {
    broodA.reset();
    broodB.reset();
    pan.reset();
    top.reset();
    outdoor.reset();
    humidity.reset();
    volts.reset();
    batteryCurrent.reset();
    stateOfCharge.reset();
    heaterCurrent.reset();
    panelPower.reset();
    stuck.reset();
  }

  @Override
  public void save(Words out) {
    broodA.save(out);
    broodB.save(out);
    pan.save(out);
    top.save(out);
    outdoor.save(out);
    humidity.save(out);
    volts.save(out);
    batteryCurrent.save(out);
    stateOfCharge.save(out);
    heaterCurrent.save(out);
    panelPower.save(out);
    stuck.save(out);
  }

  @Override
  public void restore(Words in) {
    broodA.restore(in);
    broodB.restore(in);
    pan.restore(in);
    top.restore(in);
    outdoor.restore(in);
    humidity.restore(in);
    volts.restore(in);
    batteryCurrent.restore(in);
    stateOfCharge.restore(in);
    heaterCurrent.restore(in);
    panelPower.restore(in);
    stuck.restore(in);
  }
}
