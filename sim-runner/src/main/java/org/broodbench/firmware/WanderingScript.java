package org.broodbench.firmware;

import java.util.Random;
import org.broodbench.controller.Commands;
import org.broodbench.controller.Readings;
import org.broodbench.controller.Reason;
import org.broodbench.controller.Sample;
import org.broodbench.controller.Setting;
import org.broodbench.controller.Settings;

/**
 * Readings that wander between the thresholds of the settings, with faults, presses, restarts and
 * odd ticks. The pan follows the heater, so that runs last and end in every way. Seeded: the same
 * script gives the same entries.
 *
 * @param seed of all chance
 * @param exact ticks without jitter, so that delays end on the dot
 * @param steps how many entries
 * @param keyed settings change now and then; not for a board that keeps its own
 */
record WanderingScript(
    String name, Settings settings, long seed, boolean exact, int steps, boolean keyed)
    implements Script {
  private static final int[] TICKS = {100, 1000, 5000, 20_000, 60_000, 60_000};
  private static final int[] LEAPS = {
    61_000, 300_000, 3_600_000, 30_000_000, 100_000_000, -5000, 0, Integer.MAX_VALUE
  };

  @Override
  public Player play() {
    return new Walk();
  }

  /** One playing. */
  private final class Walk implements Player {
    private final Random random = new Random(seed);
    private final Thresholds near = new Thresholds(settings);
    private final Readings in = new Readings();
    private final boolean summer = random.nextInt(4) == 0;
    private final boolean calm = random.nextBoolean();
    private final boolean fullPan = random.nextInt(4) == 0;
    private final boolean still = random.nextInt(3) == 0;

    /** Readings stay where they are between picks, so that they meet thresholds exactly. */
    private final boolean linger = random.nextInt(3) == 0;

    /** No odd millisecond in the whole vector, so that long delays can end on the dot too. */
    private final boolean dot = exact && random.nextBoolean();

    /** Warm enough inside and out for the fan to purge. */
    private final boolean airing = random.nextInt(4) == 0;

    private final boolean lowBattery = random.nextInt(4) == 0;

    /** Currents and power come and go, mostly for less than trust needs. */
    private final boolean flicker = random.nextInt(4) == 0;

    private int now = random.nextInt();
    private int left = steps;
    private int tick = 1000;
    private int broodC = settings.get(Setting.HEAT_SET_POINT_CENTI_C) - 300;
    private int apartC = 50;
    private int panC = broodC - 100;
    private int outdoorC = 500;
    private int milliV = near.fullMilliV();
    private int permille = 600;
    private int charge = 900;
    private int milliA = -500;
    private boolean frozen;
    private boolean burnt = linger && random.nextInt(3) == 0;
    private boolean welded = random.nextInt(6) == 0;
    private Settings keyedIn = settings;
    private Sample lost;
    private int lostFor;
    private int buttonFor;
    private boolean first = true;

    private boolean chance(int oneIn) {
      return random.nextInt(oneIn) == 0;
    }

    private int pick(int... values) {
      return values[random.nextInt(values.length)];
    }

    @Override
    public Tick next(Commands last) {
      if (left-- <= 0) {
        return null;
      }
      if (!first && chance(700)) {
        return Tick.restart(random.nextBoolean());
      }
      Tick change = keyed && !first && chance(900) ? change() : null;
      if (change != null) {
        return change;
      }
      if (first) {
        begin();
      } else {
        now += time(last);
      }
      first = false;
      temperatures(last);
      power(last);
      faults();
      switches();
      return Tick.step(now, in);
    }

    /** Not every power-up finds a calm hive. */
    private void begin() {
      in.shorePresent = chance(4);
      in.chargerFull = chance(6);
      in.testRequest = chance(4);
      buttonFor = chance(8) ? 3 : 0;
      if (chance(3)) {
        broodC = near.brood(random);
      }
      if (chance(3)) {
        milliV = near.volts(random);
        charge = near.charge(random);
        outdoorC = near.outdoor(random, broodC, panC);
      }
    }

    /** Another value for a setting, if the core takes it. */
    private Tick change() {
      Setting setting =
          chance(8)
              ? Setting.PURGE_TIMED_EVERY_MILLIS
              : Setting.values()[random.nextInt(Setting.values().length)];
      int value =
          chance(2)
              ? settings.get(setting)
              : setting.low() + random.nextInt(setting.high() - setting.low() + 1);
      Settings next = keyedIn.with(setting, value);
      if (!next.problems().isEmpty()) {
        return null;
      }
      keyedIn = next;
      return Tick.setting(setting, value);
    }

    private int time(Commands last) {
      if (chance(150)) {
        tick = pick(TICKS);
      }
      if (chance(400)) {
        return pick(LEAPS);
      }
      boolean waits = last.heaterReason == Reason.MIN_OFF || last.heaterReason == Reason.MIN_ON;
      if (chance(waits ? 5 : 40)) {
        // what is left of a time that is shown, to the millisecond and one beside it
        int left = Math.max(last.minOffRemainingMillis, last.minOnRemainingMillis);
        left = chance(8) ? last.serviceRemainingMillis : left;
        return left > 0 ? left + (dot ? 0 : random.nextInt(3) - 1) : tick;
      }
      if (chance(60)) {
        int around = near.time(random);
        return dot ? (around + 50) / 100 * 100 : around;
      }
      return exact ? tick : tick + random.nextInt(1 + tick / 10);
    }

    private void temperatures(Commands last) {
      int most = Math.max(1, tick / 500);
      if (chance(still || linger ? 60 : 150)) {
        broodC = near.brood(random);
      } else if (!linger) {
        int target = broodTarget(last);
        broodC += Integer.signum(target - broodC) * random.nextInt(most + 1);
      }
      if ((linger || !burnt) && chance(linger ? 40 : 250)) {
        panC = near.pan(random, stop(last), outdoorC);
      } else if (!linger || last.heater && !burnt) {
        panC += Integer.signum(panTarget(last) - panC) * random.nextInt(3 * most + 1);
      }
      if (chance(100)) {
        outdoorC = airing && chance(2) ? 1800 : near.outdoor(random, stop(last), panC);
      }
      if (chance(60)) {
        permille = near.humidity(random);
      }
      frozen ^= chance(1500);
      burnt ^= chance(800);
      welded ^= chance(2000);
      if (chance(40)) {
        apartC = near.apart(random);
      }
      in.broodA.put(frozen ? in.broodA.value : broodC);
      in.broodB.put(broodC + apartC);
      in.pan.put(panC);
      in.top.put(broodC - 300);
      in.outdoor.put(outdoorC);
      in.humidity.put(permille);
      in.batteryTemperature.put(outdoorC);
    }

    /** The temperature that pan and outdoors are compared with. */
    private int stop(Commands last) {
      return last.governingHighCentiC == Commands.NO_TEMPERATURE
          ? broodC
          : last.governingHighCentiC;
    }

    private int broodTarget(Commands last) {
      if (burnt) {
        return 1500;
      }
      int set = settings.get(Setting.HEAT_SET_POINT_CENTI_C);
      if (airing) {
        return set + 50;
      }
      return last.heater
          ? set + 600
          : last.fan ? set - 800 : summer ? set + 600 : calm ? set - 1300 : set - 300;
    }

    private int panTarget(Commands last) {
      if (welded) {
        return broodC + near.weldAbove() + (chance(2) ? 200 : 0);
      }
      int limit = settings.get(Setting.LIMIT_PAN_CENTI_C);
      return last.heater && !burnt
          ? (fullPan
              ? settings.get(Setting.LIMIT_PAN_TRIP_CENTI_C) + 200
              : Math.min(broodC + 1200, limit + 50))
          : broodC - 100;
    }

    private void power(Commands last) {
      if (chance(100)) {
        milliV = lowBattery && chance(2) ? near.lowVolts(random) : near.volts(random);
      }
      if (chance(100)) {
        charge = lowBattery && chance(2) ? near.lowCharge(random) : near.charge(random);
      }
      if (chance(80)) {
        milliA = near.batteryCurrent(random);
      }
      in.battery.put(still ? milliV : milliV + random.nextInt(3) - 1);
      in.batteryCurrent.put(milliA);
      in.stateOfCharge.put(charge);
      in.panelPower.put(chance(50) ? near.panelPower(random) : milliA > 0 ? milliA * 12 : 0);
      boolean flows = last.heater && !burnt || welded && last.isolation;
      in.heaterCurrent.put(flows ? near.heaterCurrent(random) : 0);
      if (chance(400)) {
        in.heaterCurrent.put(near.heaterCurrent(random));
        in.heaterCurrent.ageMillis = near.currentAge(random);
      }
    }

    private void faults() {
      if (flicker) {
        for (Sample sample : new Sample[] {in.batteryCurrent, in.heaterCurrent, in.panelPower}) {
          if (chance(5)) {
            sample.clear();
          }
        }
        for (Sample sample : new Sample[] {in.pan, in.outdoor, in.humidity}) {
          if (chance(9)) {
            sample.clear();
          }
        }
      }
      if (lostFor > 0) {
        lostFor--;
      } else if (chance(120)) {
        Channel channel = Channel.values()[random.nextInt(Channel.COUNT)];
        lost = channel.of(in);
        lostFor = pick(1, 3, 40, 200);
      }
      if (lostFor <= 0) {
        return;
      }
      switch (random.nextInt(7)) {
        case 0 -> lost.put(settings.get(Setting.TRUST_CODE_1_CENTI_C));
        case 1 -> lost.put(settings.get(Setting.TRUST_CODE_2_CENTI_C));
        case 2 -> lost.put(near.extreme(random));
        case 3 -> lost.ageMillis = near.age(random);
        case 4 -> lost.value += near.jump(random, tick);
        default -> lost.clear();
      }
    }

    private void switches() {
      if (buttonFor > 0) {
        buttonFor--;
      } else if (chance(200)) {
        buttonFor = pick(1, 2, 3, 6, 8, 60);
      }
      in.button = buttonFor > 0;
      in.shorePresent ^= chance(200);
      in.chargerFull ^= chance(150);
      in.testRequest ^= chance(120);
    }
  }
}
