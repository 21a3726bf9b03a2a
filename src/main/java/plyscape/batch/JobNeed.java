package plyscape.batch;

import plyscape.job.Job;

/**
 * How much memory a job is expected to need: what the program itself takes, and so much for each
 * mm2 of a panel. Measured as the least heap in which whole jobs get through (src/bench/README.md);
 * maps and rasters that several jobs read don't count, as they have room of their own.
 */
public final class JobNeed {

  private static final long BASE_BYTES = 50L << 20;

  /** Of fields, rings and moves; most with two cutters or more on rough ground. */
  private static final double BYTES_PER_MM2 = 5500;

  private JobNeed() {}

  /** Bytes, from the size of one panel. */
  public static long bytes(Job job) {
    double area = job.panel().widthMm() * job.panel().heightMm();
    return (long) (BASE_BYTES + area * BYTES_PER_MM2);
  }
}
