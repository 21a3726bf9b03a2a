package plyscape.simulate;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.IntConsumer;
import java.util.stream.IntStream;

/**
 * A loop whose turns, in any order, are taken by the thread that runs it, by those of the common
 * pool, and by whoever waits for its end and would rather help.
 */
final class SharedLoop {

  private final int turns;
  private final IntConsumer turn;
  private final AtomicInteger next = new AtomicInteger();
  private final CountDownLatch open;

  /** What a turn threw, if any did. */
  private final AtomicReference<Throwable> thrown = new AtomicReference<>();

  /**
   * @param turn does one of the turns from 0 on
   */
  SharedLoop(int turns, IntConsumer turn) {
    this.turns = turns;
    this.turn = turn;
    open = new CountDownLatch(turns);
  }

  /** Runs it to its end; what a turn threw, whoever took it, is thrown here. */
  void run() {
    IntStream.range(0, turns).parallel().forEach(any -> take());
    boolean interrupted = false;
    while (true) {
      try {
        open.await(); // turns that helpers have begun
        break;
      } catch (InterruptedException e) {
        interrupted = true;
      }
    }
    if (interrupted) {
      Thread.currentThread().interrupt();
    }
    if (thrown.get() instanceof Error error) {
      throw error;
    }
    if (thrown.get() instanceof RuntimeException exception) {
      throw exception;
    }
  }

  /** Takes turns as long as there are any. */
  void help() {
    boolean more = true;
    while (more) {
      more = take();
    }
  }

  private boolean take() {
    int mine = next.getAndIncrement();
    if (mine >= turns) {
      return false;
    }
    try {
      turn.accept(mine);
    } catch (RuntimeException | Error e) {
      thrown.compareAndSet(null, e);
    } finally {
      open.countDown();
    }
    return true;
  }
}
