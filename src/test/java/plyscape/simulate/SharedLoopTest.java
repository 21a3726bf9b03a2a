package plyscape.simulate;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicIntegerArray;
import org.junit.jupiter.api.Test;

class SharedLoopTest {

  @Test
  void helperAndRunner_everyTurnOnceAndDoneAtTheEnd() throws InterruptedException {
    int[] once = new int[200];
    Arrays.fill(once, 1);
    for (int trial = 0; trial < 50; trial++) {
      var taken = new AtomicIntegerArray(once.length);
      var loop = new SharedLoop(once.length, taken::incrementAndGet);
      Thread helper = new Thread(loop::help);
      helper.start();
      loop.run();
      int[] counts = new int[once.length];
      Arrays.setAll(counts, taken::get);
      assertArrayEquals(once, counts, "trial " + trial);
      helper.join();
    }
  }

  @Test
  void turnThatAHelperTook_isWaitedFor() throws InterruptedException {
    var begun = new CountDownLatch(1);
    var mayEnd = new CountDownLatch(1);
    int[] done = new int[1];
    var loop =
        new SharedLoop(
            1,
            turn -> {
              begun.countDown();
              await(mayEnd);
              done[0]++;
            });
    Thread helper = new Thread(loop::help);
    helper.start();
    begun.await();
    Thread runner = new Thread(loop::run);
    runner.start();
    runner.join(50);
    assertEquals(0, done[0]);
    mayEnd.countDown();
    runner.join();
    assertEquals(1, done[0]);
  }

  @Test
  void turnThatThrows_throwsOutOfRunWhoeverTookIt() throws InterruptedException {
    var loop =
        new SharedLoop(
            3,
            turn -> {
              if (turn == 0) {
                throw new IllegalStateException("turn 0");
              }
            });
    Thread helper = new Thread(loop::help);
    helper.start();
    helper.join();
    assertEquals("turn 0", assertThrows(IllegalStateException.class, loop::run).getMessage());
  }

  private static void await(CountDownLatch latch) {
    try {
      latch.await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
