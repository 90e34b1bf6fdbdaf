package org.broodbench.rig;

/** What the keeper knows about a part. */
public enum Known {
  /** It is so. */
  YES,
  /** It is not so. */
  NO,
  /** Nobody looked. */
  UNKNOWN
}
