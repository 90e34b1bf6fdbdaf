package org.broodbench.loop;

import java.util.ArrayList;
import java.util.List;
import org.broodbench.colony.ColonyHeat;
import org.broodbench.colony.Hour;
import org.broodbench.colony.Population;
import org.broodbench.hive.BoxSpec;
import org.broodbench.hive.HiveView;
import org.broodbench.plant.Plant;
import org.broodbench.rig.Scenario;

/**
 * Lets the numbers of a colony move along a run: gathers what it meets, steps the population once
 * an hour and hands the numbers to the hive. Feed is booked here: stores at the start and in added
 * boxes, feed given and nectar, less what the heat took.
 */
final class ColonyLife {
  /** Fewer bees than this are no colony any more; own choice. */
  static final double LEAST_BEES = 100;

  /** Bees forage from this light on, W/m²; own choice. */
  private static final double FLIGHT_WM2 = 80;

  /** Bees do not forage in wind above this at the hive, m/s; from memory. */
  private static final double FLIGHT_WIND_MS = 6;

  /** Rain that keeps bees at home, mm/h; own choice. */
  private static final double FLIGHT_RAIN_MM_H = 0.2;

  /** Over so many kelvin above the threshold flight grows to its full extent; own choice. */
  private static final double FLIGHT_RISE_K = 4;

  /** Light that counts as day, W/m²; own choice. */
  private static final double DAY_WM2 = 5;

  /** Worker cells on both sides of a deep frame, and the height of its box, m; from memory. */
  static final double DEEP_FRAME_CELLS = 6_900;

  static final double DEEP_BOX_M = 0.244;

  /** Honey of 17 % water that a kilogram of sugar makes, kg. */
  private static final double HONEY_OF_SUGAR = 1 / 0.81;

  private final Plant plant;
  private final Population bees;
  private final Hour hour = new Hour();
  private final boolean[] light = new boolean[24];
  private final List<ColonyDay> days = new ArrayList<>();
  private final double flightFromC;

  private double gatheredS;
  private double nestKs;
  private double airKs;
  private double flightS;
  private double lightS;
  private int hours;
  private double knownBees;
  private double knownBrood;
  private double knownFedKg;
  private double knownBoxKg;
  private double knownColonyJ;
  private double knownNectarKg;
  private double storesKg;

  private double dayNestK;
  private double dayLowestC = Double.POSITIVE_INFINITY;
  private double dayOutdoorLowC = Double.POSITIVE_INFINITY;
  private double dayColdS;
  private double dayFlightH;
  private double dayHeaterJ;

  ColonyLife(Scenario scenario, Plant plant) {
    this.plant = plant;
    bees = new Population(scenario.colony());
    flightFromC = scenario.colony().life().flightFromC();
    knownBees = plant.hive().bees();
    knownBrood = plant.hive().broodCells();
    knownBoxKg = boxKg();
    storesKg = knownBoxKg;
    // the day before the run is taken to be as light as the season of equal day and night
    java.util.Arrays.fill(light, 0, 12, true);
  }

  /** Stores of all boxes as described, kg. */
  private double boxKg() {
    double kg = 0;
    for (BoxSpec b : plant.hive().spec().boxes()) {
      kg += b.storesKg();
    }
    return kg;
  }

  private double combCells() {
    double cells = 0;
    for (BoxSpec b : plant.hive().spec().boxes()) {
      cells += b.frames() * DEEP_FRAME_CELLS * b.heightM() / DEEP_BOX_M;
    }
    return cells;
  }

  /** Gathers the solved step; called before the plant moves on. */
  void book(double lengthS) {
    var hive = plant.hive();
    var weather = plant.weather();
    HiveView view = hive.view();
    double nestC = view.meanC(view.nestNode());
    nestKs += nestC * lengthS;
    airKs += view.meanC(view.broodAirNode()) * lengthS;
    gatheredS += lengthS;
    boolean fair =
        weather.ghiWM2 >= FLIGHT_WM2
            && weather.windMS <= FLIGHT_WIND_MS
            && weather.precipMmPerH <= FLIGHT_RAIN_MM_H;
    if (fair && weather.airC > flightFromC) {
      flightS += lengthS * Math.min(1, (weather.airC - flightFromC) / FLIGHT_RISE_K);
    }
    lightS += weather.ghiWM2 >= DAY_WM2 ? lengthS : 0;
    dayColdS += nestC < 32 ? lengthS : 0;
    dayLowestC = Math.min(dayLowestC, nestC);
    dayOutdoorLowC = Math.min(dayOutdoorLowC, weather.airC);
    dayHeaterJ += plant.supply().heaterW() * lengthS;
  }

  /**
   * Steps the population where an hour is full; called after the plant has moved on.
   *
   * @return false where the colony has just come to its end
   */
  boolean hourIfDue() {
    if (gatheredS < 3600 - 1e-6) {
      return true;
    }
    var hive = plant.hive();
    hour.nestC = nestKs / gatheredS;
    hour.airC = airKs / gatheredS;
    hour.flight = flightS / gatheredS;
    light[hours % 24] = lightS > gatheredS / 2;
    hour.lightHours = 0;
    for (boolean l : light) {
      hour.lightHours += l ? 1 : 0;
    }
    takeWhatCame();
    hour.storesKg = storesKg;
    hour.combCells = combCells();
    boolean lived = hive.alive();
    if (!lived && bees.bees() > 0) {
      bees.die();
    }
    boolean lives = lived;
    if (lived) {
      bees.hour(hour);
      storesKg += bees.nectarKg() - knownNectarKg;
      knownNectarKg = bees.nectarKg();
      lives = bees.bees() >= LEAST_BEES;
      if (!lives) {
        bees.die();
      }
      hive.populate(bees.bees(), lives ? bees.broodToWarm(hour.lightHours) : 0);
      knownBees = hive.bees();
      knownBrood = hive.broodCells();
    }
    hours++;
    dayNestK += hour.nestC;
    dayFlightH += hour.flight;
    gatheredS = 0;
    nestKs = 0;
    airKs = 0;
    flightS = 0;
    lightS = 0;
    if (hours % 24 == 0) {
      endDay();
    }
    return lives || !lived;
  }

  /** Bees that were installed, feed, boxes, and what the heat took since the hour before. */
  private void takeWhatCame() {
    var hive = plant.hive();
    if (hive.bees() > knownBees || hive.broodCells() > knownBrood) {
      bees.come(hive.bees() - knownBees, hive.broodCells() - knownBrood);
    }
    double boxKg = boxKg();
    double colonyJ = hive.ledger().colonyJ;
    storesKg += boxKg - knownBoxKg;
    storesKg += (hive.fedKg() - knownFedKg) * HONEY_OF_SUGAR;
    storesKg -= (colonyJ - knownColonyJ) / ColonyHeat.HONEY_J_G * 1e-3;
    storesKg = Math.max(0, storesKg);
    knownBoxKg = boxKg;
    knownFedKg = hive.fedKg();
    knownColonyJ = colonyJ;
  }

  private void endDay() {
    days.add(
        new ColonyDay(
            hours / 24,
            bees.bees(),
            bees.foragers(),
            bees.brood().all(),
            bees.laid(),
            bees.brood().lostToCold(),
            bees.brood().lostToHeat(),
            storesKg,
            bees.pollenKg(),
            bees.pollenEatenKg(),
            bees.waterKg() + plant.hive().ledger().waterFetchedKg,
            dayFlightH,
            dayNestK / 24,
            dayLowestC,
            dayColdS / 3600,
            dayOutdoorLowC,
            dayHeaterJ / 3600,
            combCells(),
            bees.uncovered()));
    dayNestK = 0;
    dayFlightH = 0;
    dayColdS = 0;
    dayHeaterJ = 0;
    dayLowestC = Double.POSITIVE_INFINITY;
    dayOutdoorLowC = Double.POSITIVE_INFINITY;
  }

  /** The colony died of cold all at once. */
  void died() {
    bees.die();
  }

  /** Day by day so far. */
  List<ColonyDay> days() {
    return List.copyOf(days);
  }
}
