package org.broodbench.sky;

import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import net.e175.klaus.solarpositioning.SPA;
import org.broodbench.checks.CheckRows;
import org.broodbench.checks.CheckRows.Row;
import org.junit.jupiter.api.Test;

/** The worked example of Reda and Andreas, and positions and events of independent ephemerides. */
class SunValidationTest {

  @Test
  void everyRowOfTheSunIsMet() {
    CheckRows.of("SOL").run(75, SunValidationTest::compute);
  }

  private static double compute(Row r) {
    if (r.id().startsWith("SOL-SPA")) {
      return example(r);
    }
    if (r.id().startsWith("SOL-REF")) {
      return Sun.refractionDeg(
          r.number("true_elev_deg"), 100 * r.number("p_mbar"), r.number("T_C"));
    }
    if (r.id().startsWith("SOL-RS")) {
      long day = LocalDate.parse(r.text("date_local")).toEpochDay();
      Sun.Day d = Sun.day(day, place(r));
      long event =
          r.id().endsWith("RISE")
              ? d.riseEpochS().getAsLong()
              : r.id().endsWith("SET") ? d.setEpochS().getAsLong() : d.transitEpochS();
      return (event - day * 86400) / 3600.0;
    }
    double t = Instant.parse(r.text("utc")).getEpochSecond();
    if (r.id().startsWith("SOL-DEC")) {
      return Sun.ephemeris(t, Sun.DELTA_T_S).declinationDeg();
    }
    if (r.id().startsWith("SOL-EOT")) {
      return Sun.equationOfTimeMin(t);
    }
    Sun.Position p = Sun.position(t, place(r));
    return r.id().endsWith("AZ") ? p.azimuthDeg() : p.elevationDeg();
  }

  private static Place place(Row r) {
    return new Place(r.number("lat_deg"), r.number("lon_deg"), r.number("elev_m"));
  }

  private static double example(Row r) {
    double t = OffsetDateTime.parse(r.text("local")).toEpochSecond();
    double deltaT = r.number("deltaT_s");
    Place place = place(r);
    Sun.Ephemeris e = Sun.ephemeris(t, deltaT);
    // the quantities on the way are those of the library that our class stands on
    SPA.SpaTimeDependent parts =
        SPA.calculateSpaTimeDependentParts(
            Instant.ofEpochSecond((long) t).atZone(ZoneOffset.UTC), deltaT);
    Sun.Position p = Sun.position(t, place, deltaT);
    double lift = Sun.refractionDeg(p.elevationDeg(), 100 * r.number("p_mbar"), r.number("T_C"));
    Sun.Day day = Sun.day(LocalDate.of(2003, 10, 17).toEpochDay(), place);
    Sun.Day evening = Sun.day(LocalDate.of(2003, 10, 16).toEpochDay(), place);
    double local = LocalDate.of(2003, 10, 17).toEpochDay() * 86400.0 + 7 * 3600;
    return switch (r.id().substring(8)) {
      case "01" -> t / 86400 + 2440587.5;
      case "02" -> parts.thetaDegrees() - 180;
      case "03" -> Sun.wrap180(-parts.betaDegrees());
      case "04" -> e.distanceAu();
      case "05" -> e.hourAngleDeg(place.longitudeDeg());
      case "06" -> parts.deltaPsi();
      case "07" -> parts.epsilonDegrees() - meanObliquityDeg(t + deltaT);
      case "08" -> parts.epsilonDegrees();
      case "09" -> p.zenithDeg() - lift;
      case "10" -> p.azimuthDeg();
      case "11" ->
          StrictMath.toDegrees(
              StrictMath.acos(
                  Transposition.cosIncidence(
                      p.zenithDeg() - lift,
                      p.azimuthDeg(),
                      r.number("slope_deg"),
                      180 + r.number("az_rotation_deg"))));
      case "12" -> (day.riseEpochS().getAsLong() - local) / 3600;
      // the report takes the sunset of the UTC day, which at 105 W is the evening before
      case "13" -> (evening.setEpochS().getAsLong() - local + 86400) / 3600;
      case "14" -> lift;
      default -> throw new IllegalArgumentException(r.id());
    };
  }

  /** Reda and Andreas, equation 24, of which nutation is what the true obliquity has more. */
  private static double meanObliquityDeg(double terrestrialEpochS) {
    double u = (terrestrialEpochS / 86400 + 2440587.5 - 2451545) / 3652500;
    double[] c = {
      84381.448, -4680.93, -1.55, 1999.25, -51.38, -249.67, -39.05, 7.12, 27.87, 5.79, 2.45
    };
    double sum = 0;
    for (int i = c.length - 1; i >= 0; i--) {
      sum = sum * u + c[i];
    }
    return sum / 3600;
  }
}
