package org.broodbench.firmware;

import java.util.List;

/**
 * What a check of firmware found.
 *
 * @param target what was checked, as the user named it
 * @param board what the firmware said of itself, or null
 * @param vectors vectors that were played to their end
 * @param steps entries that were compared and equal, the differing one included
 * @param fault hang, crash or nonsense, or null
 * @param faultText in words, or null
 * @param heaterFailedOff after a fault, whether the heater was seen off within three ticks; or null
 * @param finding the first difference, or null
 * @param violated rules that differences of later vectors are about, the first one's included
 * @param exercised rules seen at work
 * @param missed rules that could be seen and were not
 * @param notReported fields that the firmware does not report
 * @param resent lines sent again
 * @param chatter lines damaged or none of the protocol's
 * @param closedLoop both runs of a scenario, or null
 */
public record ConformReport(
    String target,
    Board board,
    int vectors,
    long steps,
    FirmwareFault.Kind fault,
    String faultText,
    Boolean heaterFailedOff,
    Finding finding,
    List<String> violated,
    List<String> exercised,
    List<String> missed,
    List<CommandField> notReported,
    long resent,
    long chatter,
    ClosedLoop.Result closedLoop) {
  /** No difference and no fault. */
  public boolean equal() {
    return fault == null && finding == null;
  }
}
