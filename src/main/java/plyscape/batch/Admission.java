package plyscape.batch;

/**
 * Lets jobs begin as long as the memory that they are expected to need fits beside that of those
 * that run; the others wait, the one that came first being the first to go on, so that a large job
 * isn't passed by small ones for ever. A job that needs more than there is waits until it is alone.
 * For use by several threads.
 */
public final class Admission {

  private final long bytes;
  private long taken;
  private int inside;
  private long comers;
  private long next;

  /** Of so much memory in all. */
  public Admission(long bytes) {
    this.bytes = bytes;
  }

  /** A job's memory, until it is closed. */
  public final class Ticket implements AutoCloseable {
    private final long need;

    private Ticket(long need) {
      this.need = need;
    }

    @Override
    public void close() {
      leave(need);
    }
  }

  /**
   * Waits until a job may begin.
   *
   * @param need what it is expected to need, bytes; {@link Long#MAX_VALUE} to be alone
   */
  public synchronized Ticket enter(long need) {
    long turn = comers++;
    long counted =
        Math.max(1, Math.min(need, bytes)); // beside one that is to be alone nothing fits
    boolean interrupted = false;
    while (turn != next || inside > 0 && (need > bytes || taken + counted > bytes)) {
      try {
        wait();
      } catch (InterruptedException e) {
        interrupted = true; // the batch is ending; the job itself sees it
      }
    }
    next++;
    inside++;
    taken += counted;
    notifyAll();
    if (interrupted) {
      Thread.currentThread().interrupt();
    }
    return new Ticket(counted);
  }

  private synchronized void leave(long need) {
    inside--;
    taken -= need;
    notifyAll();
  }
}
