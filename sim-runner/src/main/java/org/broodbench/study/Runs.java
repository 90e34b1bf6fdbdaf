package org.broodbench.study;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/** Carries out independent runs on some threads. */
final class Runs {
  private Runs() {}

  /** The results in the order of the runs. */
  static <T> List<T> all(List<? extends Callable<T>> runs, int threads) {
    if (runs.isEmpty()) {
      return List.of();
    }
    ExecutorService pool = Executors.newFixedThreadPool(threads);
    try {
      List<Future<T>> futures = new ArrayList<>();
      for (Callable<T> run : runs) {
        futures.add(pool.submit(run));
      }
      List<T> results = new ArrayList<>();
      for (Future<T> f : futures) {
        results.add(f.get());
      }
      return results;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("the runs were interrupted", e);
    } catch (ExecutionException e) {
      if (e.getCause() instanceof RuntimeException cause) {
        throw cause;
      }
      throw new IllegalStateException(e.getCause());
    } finally {
      pool.shutdownNow();
    }
  }
}
