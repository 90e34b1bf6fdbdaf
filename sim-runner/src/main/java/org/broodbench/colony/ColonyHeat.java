package org.broodbench.colony;

import org.broodbench.matter.SmoothTable;

/**
 * Heat, gases and damage of a colony as functions of the temperature of its core and of the air
 * around it.
 *
 * <p>Size law of cluster heat loss: E. E. Southwick, J. Comp. Physiol. B 156 (1985) 143-149, as
 * read in its abstract: oxygen use ∝ M^−0.479 per mass, hence conductance ∝ M^0.52. Resting heat:
 * 12.3 W/kg and Q10 1.9 from sleeping bees, Thermochimica Acta 382 (2002) 221, held at 10 W/kg at
 * 35 °C. Larval heat rises with Q10 3.13: M. Petz and others, J. Insect Physiol. 50 (2004),
 * abstract. The shapes of the logistic terms are our own choice, fitted to those anchors; range
 * 0.05 to 2 kg. Above 36 °C bees fan, spread water and at last hang outside: fans of a dozen move
 * 50 to 60 L/min, about 1 L/s at most (from memory, Hazelhoff by way of Seeley); how many hang
 * outside is our own choice. Left out: age structure, day and night, contraction in space.
 */
public final class ColonyHeat {
  /** Heat of one gram of honey of 17 % water, J/g: 80 to 82 % sugar at 15.57 kJ/g. */
  public static final double HONEY_J_G = 12_600;

  /** Water freed by that gram, metabolic and free, g/g: 0.486 + 0.172. */
  public static final double WATER_G_G = 0.658;

  /** Carbon dioxide made by that gram, g/g: C6H12O6 gives 264/180 g per g of sugar. */
  public static final double CO2_G_G = 1.187;

  /** Knots in a kelvin: the steepest of the shapes is then met within 2e-6. */
  private static final int PER_K = 8;

  private static final double LOW_C = -40;
  private static final double HIGH_C = 70;

  private static final SmoothTable REST = table(ColonyHeat::rest);
  private static final SmoothTable ACT = table(ColonyHeat::act);
  private static final SmoothTable BROOD = table(ColonyHeat::broodActivity);
  private static final SmoothTable LOOSE = table(c -> logistic((c - 14) * 0.5));
  private static final SmoothTable HOT = table(c -> logistic((c - 36) * 2));

  /** Share of bees that hang outside: at most 0.6, half of that at 38.5 °C. */
  private static final SmoothTable OUT = table(c -> 0.6 * logistic((c - 38.5) * 2));

  /** Air that one fanning bee moves, m³/s: 55 L/min by twelve. */
  private static final double FANNER_M3S = 0.055 / 60 / 12;

  /** Share of bees that fan; own choice, far below what was seen in small groups. */
  private static final double FANNERS = 0.01;

  /** Most that fanning moves through an entrance, m³/s. */
  private static final double MOST_FANNED_M3S = 1e-3;

  private final ColonySpec spec;
  private final double ceilingWKg;
  private double massKg;
  private double massLawWK;
  private double brood;
  private double broodW0;
  private double mostCoolingKgS;
  private double mostFannedM3S;

  private double heatW;
  private double lossWK;
  private double mantleC;
  private double loosening;
  private double coolingKgS;
  private double fannedM3S;

  /** A colony at the start of a run. */
  public ColonyHeat(ColonySpec spec) {
    this.spec = spec;
    ceilingWKg = spec.shiverCeilingWKg();
    populate(spec.bees(), spec.broodCells());
  }

  /** Sets the number of adults and of brood cells. */
  public void populate(double bees, double broodCells) {
    massKg = bees * spec.beeMassG() * 1e-3;
    massLawWK = massKg > 0 ? spec.clusterLossFactor() * 0.20 * StrictMath.pow(massKg, 0.52) : 0;
    brood = broodCells;
    broodW0 = broodCells * spec.broodHeatMW() * 1e-3;
    mostCoolingKgS = spec.waterNear() ? bees * 0.3e-3 / 1000 / 3600 : 0;
    mostFannedM3S = Math.min(MOST_FANNED_M3S, FANNERS * bees * FANNER_M3S);
  }

  /** The description it was made from. */
  public ColonySpec spec() {
    return spec;
  }

  /** Mass of the adults, kg. */
  public double massKg() {
    return massKg;
  }

  /**
   * Evaluates the colony.
   *
   * @param coreC temperature of the nest, °C
   * @param airC temperature of the air of the brood box, °C
   */
  public void evaluate(double coreC, double airC) {
    double loose = LOOSE.at(airC);
    double hot = HOT.at(coreC);
    loosening = (1 + 2 * loose) * (1 + 3 * hot);
    lossWK = massLawWK * loosening;
    double drawn = airC + 0.25 * (coreC - airC);
    double kept = drawn > 10 ? drawn : 10;
    mantleC = coreC < kept ? coreC : kept;
    double target = brood > 0 ? 36 : 27;
    double demand = (target - coreC) * 0.25;
    demand = demand < 0 ? 0 : demand > 1 ? 1 : demand;
    double inCore = 0.35 + 0.45 * loose;
    double ceiling = demand * ceilingWKg;
    double perKg =
        inCore * (REST.at(coreC) + ceiling * ACT.at(coreC))
            + (1 - inCore) * (REST.at(mantleC) + 0.3 * ceiling * ACT.at(mantleC));
    double broodW = broodW0 * BROOD.at(coreC);
    heatW = massKg * (1 - OUT.at(coreC)) * perKg + broodW;
    // 0.3 g/h per 1000 bees once the nest is well above 36 °C; low confidence
    double spray = (coreC - 36) * 0.5;
    spray = spray < 0 ? 0 : spray > 1 ? 1 : spray;
    coolingKgS = spray * mostCoolingKgS;
    // nobody fans below 36 °C, all that will at 38 °C
    fannedM3S = spray * spray * (3 - 2 * spray) * mostFannedM3S;
  }

  private static SmoothTable table(java.util.function.DoubleUnaryOperator shape) {
    return new SmoothTable(LOW_C, HIGH_C, PER_K, shape);
  }

  private static double logistic(double x) {
    return 1 / (1 + StrictMath.exp(-x));
  }

  /** Larval respiration relative to 34.5 °C, falling off above 40 °C, where brood dies. */
  private static double broodActivity(double coreC) {
    return StrictMath.pow(3.13, (coreC - 34.5) / 10) * logistic((42 - coreC) * 2);
  }

  /** Resting heat, W/kg: collapses in chill coma, and above 46 °C, where adults die. */
  private static double rest(double bodyC) {
    return 10
        * StrictMath.pow(1.9, (bodyC - 35) / 10)
        * logistic(bodyC - 10)
        * logistic((46 - bodyC) * 2);
  }

  private static double act(double bodyC) {
    return logistic((bodyC - 13) / 1.5) * logistic((37 - bodyC) / 0.7);
  }

  /** All metabolic heat, adults and brood, W. */
  public double heatW() {
    return heatW;
  }

  /** Conductance from the nest to the air of the brood box, W/K. */
  public double lossWK() {
    return lossWK;
  }

  /** Temperature of the mantle of bees, °C; below 10 °C when it can no longer be kept. */
  public double mantleC() {
    return mantleC;
  }

  /** How open the cluster is: 1 tight, up to 12 spread out; gas exchange goes with it. */
  public double loosening() {
    return loosening;
  }

  /** Air that bees fan out through the entrance, and as much that comes in, m³/s. */
  public double fannedM3S() {
    return fannedM3S;
  }

  /** Water that bees fetch and spread for cooling, kg/s. */
  public double coolingKgS() {
    return coolingKgS;
  }
}
