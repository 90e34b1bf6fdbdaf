package org.broodbench.loop;

/**
 * A colony at the end of a day, and what it met in it.
 *
 * @param day days since the start of the run, 1 for the first
 * @param bees adult bees
 * @param foragers foragers among them
 * @param brood cells with brood
 * @param laid eggs laid so far
 * @param lostToCold brood killed by cold so far, cells; magnitude unpublished
 * @param lostToHeat brood killed by heat so far, cells; magnitude unpublished
 * @param storesKg honey and its like left, kg
 * @param pollenKg pollen left, kg
 * @param pollenEatenKg pollen fed to larvae so far, kg
 * @param waterKg water taken for larval food and cooling so far, kg
 * @param flightHours hours of the day in which bees could forage
 * @param nestC mean temperature of the nest in the day, °C
 * @param lowestC lowest temperature of the nest in the day, °C
 * @param coldHours hours of the day with the nest below 32 °C
 * @param outdoorLowC lowest air outside, °C
 * @param heaterWh energy of the heater in the day, Wh
 * @param combCells worker cells of all combs in the hive
 * @param uncovered share of the brood that no bee covers
 */
public record ColonyDay(
    int day,
    double bees,
    double foragers,
    double brood,
    double laid,
    double lostToCold,
    double lostToHeat,
    double storesKg,
    double pollenKg,
    double pollenEatenKg,
    double waterKg,
    double flightHours,
    double nestC,
    double lowestC,
    double coldHours,
    double outdoorLowC,
    double heaterWh,
    double combCells,
    double uncovered) {}
