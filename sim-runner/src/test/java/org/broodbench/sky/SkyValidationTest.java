package org.broodbench.sky;

import org.broodbench.checks.CheckRows;
import org.broodbench.checks.CheckRows.Row;
import org.broodbench.matter.MoistAir;
import org.junit.jupiter.api.Test;

/** Diffuse fraction, tilted planes, clear sky, air mass, long wave; source beside each row. */
class SkyValidationTest {

  @Test
  void diffuseFraction() {
    CheckRows.of("DIF").run(22, SkyValidationTest::diffuse);
  }

  private static double diffuse(Row r) {
    if (r.id().startsWith("DIF-ERBS-T")) {
      double cosZ = StrictMath.cos(StrictMath.toRadians(r.number("zenith_deg")));
      int day = java.time.LocalDate.parse(r.text("date")).getDayOfYear();
      // the row says which solar constant it was made with
      double outside = 1366.1 * Irradiance.spencerDistanceFactor(day);
      double g = r.number("ghi");
      // its cosine is kept above 0.065, its clearness below 2
      double kt = Math.min(g / (outside * Math.max(cosZ, 0.065)), 2);
      return g * Irradiance.erbsDiffuseFraction(kt);
    }
    if (r.id().startsWith("DIF-ERBSD")) {
      return Irradiance.erbsDailyDiffuseFraction(r.number("KT"), r.number("ws_deg"));
    }
    return r.id().startsWith("DIF-ERBS")
        ? Irradiance.erbsDiffuseFraction(r.number("kt"))
        : Irradiance.collaresPereiraRablDailyDiffuseFraction(r.number("KT"));
  }

  @Test
  void tiltedPlanes() {
    CheckRows.of("TRN").run(32, SkyValidationTest::tilted);
  }

  private static double tilted(Row r) {
    if (r.id().equals("TRN-ISO-T")) {
      return Transposition.isotropicWM2(r.number("dhi"), r.number("tilt_deg"));
    }
    double tilt = r.number("tilt_deg");
    double z = r.number("zenith_deg");
    double dni = r.number("dni");
    double dhi = r.number("dhi");
    if (r.id().equals("TRN-HAND")) {
      double cos = Transposition.cosIncidence(z, 180 + r.number("sun_az_from_S_deg"), tilt, 180);
      return dni * Math.max(0, cos)
          + Transposition.isotropicWM2(dhi, tilt)
          + Transposition.groundWM2(r.number("ghi"), r.number("albedo"), tilt);
    }
    double cosZ = StrictMath.cos(StrictMath.toRadians(z));
    double ghi = dhi + dni * cosZ;
    double cos =
        Transposition.cosIncidence(z, r.number("sun_az_deg"), tilt, r.number("plane_az_deg"));
    double out = r.number("dni_extra");
    return switch (r.id().substring(6)) {
      case "BEAM" -> dni * Math.max(0, cos);
      case "ISO" -> Transposition.isotropicWM2(dhi, tilt);
      case "HD" -> Transposition.hayDaviesWM2(dhi, dni, out, cos, cosZ, tilt);
      case "HDKR" -> Transposition.reindlWM2(dhi, dni, ghi, out, cos, cosZ, tilt);
      case "PEREZ" -> Transposition.perezWM2(dhi, dni, out, cos, z, ClearSky.airMass(z), tilt);
      case "GND" -> Transposition.groundWM2(ghi, r.number("albedo"), tilt);
      default -> throw new IllegalArgumentException(r.id());
    };
  }

  @Test
  void airMass() {
    CheckRows.of("AM")
        .run(
            8,
            r ->
                r.has("am_rel")
                    ? absoluteMass(r)
                    : ClearSky.airMass(r.number("apparent_zenith_deg")));
  }

  private static double absoluteMass(Row r) {
    return ClearSky.absoluteAirMass(r.number("am_rel"), r.number("p_Pa"));
  }

  @Test
  void clearSky() {
    CheckRows.of("CS").run(40, SkyValidationTest::clear);
  }

  private static double clear(Row r) {
    if (r.id().startsWith("CS-HAUR")) {
      return ClearSky.haurwitzGhi(sine(r.number("apparent_elev_deg")));
    }
    if (r.id().startsWith("CS-KCG")) {
      return ClearSky.kastenCzeplakGhi(sine(r.number("elev_deg")));
    }
    if (r.id().startsWith("CS-KC")) {
      return ClearSky.kastenCzeplakCloudFactor(r.number("oktas"));
    }
    if (r.id().startsWith("CS-ASHRAE")) {
      return ClearSky.exponentialBeam(
          r.number("A"),
          r.number("B"),
          sine(90 - r.number("zenith_deg")),
          r.id().endsWith("1") ? 0.9 : 1);
    }
    double elevation =
        r.has("apparent_elev_deg")
            ? r.number("apparent_elev_deg")
            : 90 - r.number("apparent_zenith_deg");
    ClearSky.Components c =
        ClearSky.ineichen(
            sine(elevation),
            r.number("am_abs"),
            r.number("linke"),
            r.number("altitude_m"),
            r.number("dni_extra"));
    return switch (r.id().substring(r.id().lastIndexOf('-') + 1)) {
      case "GHI" -> c.ghi();
      case "DNI" -> c.dni();
      default -> c.dhi();
    };
  }

  private static double sine(double deg) {
    return StrictMath.sin(StrictMath.toRadians(deg));
  }

  @Test
  void longWave() {
    CheckRows.of("LW").run(31, SkyValidationTest::wave);
  }

  private static double wave(Row r) {
    String kind = r.id().substring(3, r.id().lastIndexOf('-'));
    if (kind.equals("CLOUD")) {
      return LongWave.cloudFactor(r.number("cover_tenths"));
    }
    double t = r.number("T_C");
    return switch (kind) {
      case "BB" -> LongWave.blackBodyWM2(t);
      case "SWIN" -> LongWave.swinbankSkyC(t) + MoistAir.ZERO_C_IN_K;
      case "SWF" -> LongWave.swinbankFluxWM2(t);
      case "CA" -> LongWave.clarkAllenEmissivity(r.number("Td_C"));
      case "BM" -> LongWave.berdahlMartinEmissivity(r.number("Td_C"));
      case "LD" -> LongWave.clarkAllenEmissivity(r.number("Td_C")) * LongWave.blackBodyWM2(t);
      case "BRUT" -> LongWave.clearEmissivity(LongWave.Model.BRUTSAERT, t, 100 * r.number("e_hPa"));
      case "IDSO" -> LongWave.clearEmissivity(LongWave.Model.IDSO, t, 100 * r.number("e_hPa"));
      case "PRATA" -> LongWave.clearEmissivity(LongWave.Model.PRATA, t, 100 * r.number("e_hPa"));
      default -> throw new IllegalArgumentException(r.id());
    };
  }
}
