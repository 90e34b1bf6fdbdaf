package org.broodbench.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import org.junit.jupiter.api.Test;

class ParallelTest {
  private static List<Callable<Integer>> squares(int count) {
    List<Callable<Integer>> tasks = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      int n = i;
      tasks.add(() -> n * n);
    }
    return tasks;
  }

  @Test
  void everyResultComesOnceWithItsNumber() {
    for (int threads : new int[] {1, 2, 7}) {
      Set<Integer> seen = new TreeSet<>();
      boolean whole =
          new Parallel(threads, () -> false)
              .run(
                  squares(50),
                  (task, result) -> {
                    assertEquals(task * task, result);
                    assertTrue(seen.add(task));
                  });
      assertTrue(whole);
      assertEquals(50, seen.size());
    }
  }

  @Test
  void onceStoppedNoFurtherTaskBeginsButBegunOnesAreTaken() {
    List<Integer> taken = new ArrayList<>();
    boolean whole =
        new Parallel(2, () -> taken.size() >= 5)
            .run(squares(50), (task, result) -> taken.add(task));
    assertFalse(whole);
    // one more may have been under way
    assertTrue(taken.size() == 5 || taken.size() == 6, "taken " + taken.size());
  }

  @Test
  void aTaskThatFailsEndsTheStudy() {
    List<Callable<Integer>> tasks = new ArrayList<>(squares(3));
    tasks.add(
        () -> {
          throw new IllegalArgumentException("broken");
        });
    IllegalArgumentException e =
        assertThrows(
            IllegalArgumentException.class,
            () -> new Parallel(2, () -> false).run(tasks, (task, result) -> {}));
    assertEquals("broken", e.getMessage());
  }
}
