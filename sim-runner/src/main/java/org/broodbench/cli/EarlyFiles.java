package org.broodbench.cli;

import java.util.concurrent.CompletableFuture;
import org.broodbench.loop.RunResult;
import org.broodbench.output.ChartData;
import org.broodbench.output.EventsCsv;
import org.broodbench.output.TraceCsv;
import org.broodbench.rig.Scenario;

/**
 * Results that the main run alone decides, made while the runs beside it still go on: the last of
 * those leaves a processor idle.
 */
final class EarlyFiles {
  private CompletableFuture<byte[]> trace;
  private CompletableFuture<byte[]> events;
  private CompletableFuture<ChartData> charts;

  /** Begins to make them; to be called once, before any is asked for. */
  void begin(Scenario s, RunResult main) {
    trace = CompletableFuture.supplyAsync(() -> TraceCsv.bytes(s, main.trace()));
    charts = CompletableFuture.supplyAsync(() -> new ChartData(main.trace()));
    events = CompletableFuture.supplyAsync(() -> EventsCsv.bytes(s, main.events()));
  }

  byte[] trace() {
    return trace.join();
  }

  byte[] events() {
    return events.join();
  }

  ChartData charts() {
    return charts.join();
  }
}
