package org.broodbench.input.weather;

/**
 * How to treat what a weather file lacks.
 *
 * @param fillUpToS gaps up to this length are bridged by a straight line
 * @param longGaps what to do with longer ones
 */
public record ReadOptions(int fillUpToS, LongGaps longGaps) {
  /** Longer gaps. */
  public enum LongGaps {
    /** The file is refused, each gap named. */
    REFUSE,
    /** The values stay missing; a window that needs them is refused later. */
    KEEP
  }

  /** Bridge up to three hours, refuse longer gaps; own choice. */
  public static final ReadOptions DEFAULT = new ReadOptions(3 * 3600, LongGaps.REFUSE);

  /** For a description of the file: as the default, but longer gaps stay. */
  public static final ReadOptions DESCRIBE = new ReadOptions(3 * 3600, LongGaps.KEEP);
}
