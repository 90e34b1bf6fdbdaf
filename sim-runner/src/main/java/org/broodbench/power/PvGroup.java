package org.broodbench.power;

/**
 * Modules of one kind on one plane.
 *
 * @param powerW rated power at standard test conditions, W
 * @param tiltDeg slope from the horizontal, degrees
 * @param azimuthDeg direction it faces, degrees from north eastward
 */
public record PvGroup(double powerW, double tiltDeg, double azimuthDeg) {}
