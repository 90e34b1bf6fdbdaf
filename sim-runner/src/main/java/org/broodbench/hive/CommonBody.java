package org.broodbench.hive;

/**
 * Inside sizes of the common bodies, converted from inches. Ten frames: 18 3/8 by 14 3/4 in, from
 * pages of dimensions; eight frames and five-frame nucleus differ in width alone: 12 1/4 and 7 3/4
 * in, from memory, medium confidence.
 */
public enum CommonBody {
  /** Ten frames. */
  TEN_FRAME(0.467, 0.375, 10),
  /** Eight frames. */
  EIGHT_FRAME(0.467, 0.311, 8),
  /** Five frames. */
  NUCLEUS(0.467, 0.197, 5);

  /** Inside heights: 9 5/8, 6 5/8 and 5 11/16 in, from pages of dimensions. */
  public enum Depth {
    /** Brood box. */
    DEEP(0.244),
    /** Three quarters. */
    MEDIUM(0.168),
    /** For honey. */
    SHALLOW(0.144);

    private final double heightM;

    Depth(double heightM) {
      this.heightM = heightM;
    }

    /** Inside height, m. */
    public double heightM() {
      return heightM;
    }
  }

  private final double lengthM;
  private final double widthM;
  private final int frames;

  CommonBody(double lengthM, double widthM, int frames) {
    this.lengthM = lengthM;
    this.widthM = widthM;
    this.frames = frames;
  }

  /** Inside length along the frames, m. */
  public double lengthM() {
    return lengthM;
  }

  /** Inside width across the frames, m. */
  public double widthM() {
    return widthM;
  }

  /** Frames it takes. */
  public int frames() {
    return frames;
  }
}
