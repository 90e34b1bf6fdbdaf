package org.broodbench.hive;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;

import java.nio.file.Path;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The same operations in C without fused multiplication end in the same bits. */
class NetworkStepVerificationTest {
  private static final int STEPS = 100_000;

  @Test
  void bitsAreThoseOfC(@TempDir Path folder) throws Exception {
    var c = CStep.run(folder, STEPS, 1);
    Assumptions.assumeTrue(c.isPresent(), "no C compiler here");
    NetworkStep java = new NetworkStep();
    java.run(STEPS);
    assertArrayEquals(c.get().state(), java.state());
  }
}
