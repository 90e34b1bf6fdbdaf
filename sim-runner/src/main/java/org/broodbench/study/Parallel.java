package org.broodbench.study;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CompletionService;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorCompletionService;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.BooleanSupplier;

/** Many tasks on some threads. What a task gives must not depend on the others or their order. */
public final class Parallel implements Crew {
  private final int threads;
  private final BooleanSupplier stop;

  /**
   * @param threads how many at a time
   * @param stop asked between tasks; once true, no further task begins
   */
  public Parallel(int threads, BooleanSupplier stop) {
    this.threads = threads;
    this.stop = stop;
  }

  /** Takes what a task gave; called from one thread alone, in whatever order tasks end. */
  public interface Taker<T> {
    void take(int task, T result);
  }

  private record Numbered<T>(int task, T result) {}

  @Override
  public boolean run(List<String> names, Pieces how, Taker<String> taker) {
    List<Callable<String>> tasks = new ArrayList<>();
    for (String name : names) {
      tasks.add(() -> how.of(name));
    }
    return run(tasks, taker);
  }

  /**
   * Runs the tasks.
   *
   * @return whether all of them were run
   */
  public <T> boolean run(List<? extends Callable<T>> tasks, Taker<T> taker) {
    ExecutorService pool = Executors.newFixedThreadPool(threads);
    CompletionService<Numbered<T>> done = new ExecutorCompletionService<>(pool);
    try {
      int begun = 0;
      int ended = 0;
      while (ended < tasks.size()) {
        while (begun < tasks.size() && begun - ended < threads && !stop.getAsBoolean()) {
          int task = begun++;
          done.submit(() -> new Numbered<>(task, tasks.get(task).call()));
        }
        if (begun == ended) {
          return false;
        }
        Future<Numbered<T>> next = done.take();
        ended++;
        taker.take(next.get().task(), next.get().result());
      }
      return true;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return false;
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
