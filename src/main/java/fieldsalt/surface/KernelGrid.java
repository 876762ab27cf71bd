package fieldsalt.surface;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.DoubleConsumer;
import java.util.function.IntPredicate;

/**
 * Predicts the cells of a grid, group by group, on several threads. The groups are squares counted
 * from the grid's north-west corner, so results do not depend on the number of threads, nor on the
 * rows asked for at a time.
 *
 * @param inside which cells, by row * columns + column, are predicted at all
 * @param drift columns of drift at the cells' centres
 * @param threads at least 1
 */
record KernelGrid(Grid grid, IntPredicate inside, Drift drift, int threads) {
  /** Groups that a thread takes at a time. */
  private static final int BATCH = 16;

  /** The trend's columns beyond the constant one at a cell. */
  interface Drift {
    /** No drift. */
    Drift NONE = (cell, column) -> 0;

    /** The value of a column of the trend, counted from 1, at a cell. */
    double at(int cell, int column);
  }

  /** Takes results: called by several threads, once a cell. */
  interface Sink {
    void put(int cell, double estimate, double variance);
  }

  /** Every cell, constant trend, on all cores. */
  static KernelGrid of(Grid grid) {
    return new KernelGrid(
        grid, cell -> true, Drift.NONE, Runtime.getRuntime().availableProcessors());
  }

  /** The whole grid. */
  void predict(PredictionKernel kernel, int trends, DoubleConsumer progress, Sink sink) {
    predictRows(kernel, trends, 0, grid.rows(), progress, sink);
  }

  /**
   * Some rows of the grid.
   *
   * @param firstRow a multiple of the kernel's group side
   * @param progress told the share that is done, 0 to 1, never falling, by one thread at a time
   */
  void predictRows(
      PredictionKernel kernel,
      int trends,
      int firstRow,
      int lastRow,
      DoubleConsumer progress,
      Sink sink) {
    int side = kernel.groupSide();
    if (firstRow % side != 0) {
      throw new IllegalArgumentException("rows must begin at a group's border, was " + firstRow);
    }
    int across = (grid.columns() + side - 1) / side;
    int groups = across * ((lastRow - firstRow + side - 1) / side);
    AtomicInteger next = new AtomicInteger();
    Progress done = new Progress(progress, groups);
    run(
        () -> {
          PredictionKernel.Solver solver = kernel.solver();
          KernelGroup group = new KernelGroup(side * side, trends);
          for (int g = next.getAndAdd(BATCH); g < groups; g = next.getAndAdd(BATCH)) {
            int last = Math.min(groups, g + BATCH);
            for (int i = g; i < last; i++) {
              fill(group, i % across * side, firstRow + i / across * side, side, lastRow);
              predict(solver, group, sink);
            }
            done.add(last - g);
          }
        });
  }

  private void fill(KernelGroup group, int column, int row, int side, int lastRow) {
    group.clear();
    for (int r = row; r < Math.min(lastRow, row + side); r++) {
      for (int c = column; c < Math.min(grid.columns(), column + side); c++) {
        int cell = r * grid.columns() + c;
        if (inside.test(cell)) {
          int at = group.add(cell, grid.centreX(c), grid.centreY(r));
          for (int q = 1; q < group.trend.length; q++) {
            group.trend[q][at] = drift.at(cell, q);
          }
        }
      }
    }
  }

  private static void predict(PredictionKernel.Solver solver, KernelGroup group, Sink sink) {
    if (group.count() > 0) {
      solver.predict(group);
      for (int i = 0; i < group.count(); i++) {
        sink.put(group.id[i], group.estimate[i], group.variance[i]);
      }
    }
  }

  private void run(Runnable work) {
    List<Thread> others = new ArrayList<>();
    List<Throwable> failures = java.util.Collections.synchronizedList(new ArrayList<>());
    for (int t = 1; t < threads; t++) {
      Thread thread = new Thread(work, "fieldsalt-cells-" + t);
      thread.setDaemon(true);
      thread.setUncaughtExceptionHandler((at, e) -> failures.add(e));
      thread.start();
      others.add(thread);
    }
    work.run();
    others.forEach(KernelGrid::join);
    if (!failures.isEmpty()) {
      throw new IllegalStateException("prediction failed", failures.get(0));
    }
  }

  private static void join(Thread thread) {
    try {
      thread.join();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("interrupted", e);
    }
  }

  /** Counts groups; tells a listener at most every half per cent. */
  private static final class Progress {
    private final DoubleConsumer listener;
    private final int all;
    private int done;
    private int told;

    Progress(DoubleConsumer listener, int all) {
      this.listener = listener;
      this.all = all;
    }

    synchronized void add(int groups) {
      done += groups;
      if (done - told >= all / 200.0 || done == all) {
        told = done;
        listener.accept((double) done / all);
      }
    }
  }
}
