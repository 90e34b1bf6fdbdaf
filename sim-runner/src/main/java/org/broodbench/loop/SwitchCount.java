package org.broodbench.loop;

/**
 * Starts, time on and shortest runs and pauses of something that is switched. Times in seconds; NaN
 * until one is whole.
 */
public final class SwitchCount {
  private int starts;
  private double onS;
  private double shortestOnS = Double.NaN;
  private double shortestOffS = Double.NaN;
  private double shortestOffAtS = -1;
  private double shortestOnAtS = -1;
  private double changedAtS = -1;
  private boolean on;

  /** Accounts for an interval that begins at a time with a state. */
  void interval(double fromS, double lengthS, boolean nowOn) {
    if (nowOn != on) {
      if (nowOn) {
        starts++;
        if (changedAtS >= 0 && !(fromS - changedAtS >= shortestOffS)) {
          shortestOffS = fromS - changedAtS;
          shortestOffAtS = fromS;
        }
      } else if (!(fromS - changedAtS >= shortestOnS)) {
        shortestOnS = fromS - changedAtS;
        shortestOnAtS = fromS;
      }
      changedAtS = fromS;
      on = nowOn;
    }
    if (nowOn) {
      onS += lengthS;
    }
  }

  /** Number of changes from off to on. */
  public int starts() {
    return starts;
  }

  /** Time on, s. */
  public double onS() {
    return onS;
  }

  /** Shortest run that ended, s. */
  public double shortestOnS() {
    return shortestOnS;
  }

  /** When that run ended, s since the start. */
  public double shortestOnAtS() {
    return shortestOnAtS;
  }

  /** Shortest pause between two runs, s. */
  public double shortestOffS() {
    return shortestOffS;
  }

  /** When that pause ended, s since the start. */
  public double shortestOffAtS() {
    return shortestOffAtS;
  }
}
