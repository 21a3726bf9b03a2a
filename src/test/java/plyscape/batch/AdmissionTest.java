package plyscape.batch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** Jobs that wait for memory. */
class AdmissionTest {

  private final ExecutorService threads = Executors.newCachedThreadPool();
  private final Admission memory = new Admission(100);

  @AfterEach
  void end() {
    threads.shutdownNow();
  }

  /** One that waits in a thread of its own; gives its ticket when it is let in. */
  private Future<Admission.Ticket> coming(long need) throws InterruptedException {
    CountDownLatch begun = new CountDownLatch(1);
    Future<Admission.Ticket> ticket =
        threads.submit(
            () -> {
              begun.countDown();
              return memory.enter(need);
            });
    begun.await();
    Thread.sleep(20); // so that it stands in the queue before the next comes
    return ticket;
  }

  @Test
  void whatFits_isLetIn_whatDoesNotWaitsUntilAnotherLeaves() throws Exception {
    Admission.Ticket first = memory.enter(60);
    memory.enter(40);
    Future<Admission.Ticket> third = coming(50);
    assertFalse(third.isDone());
    first.close();
    assertTrue(third.get(10, TimeUnit.SECONDS) != null);
  }

  @Test
  void aSmallOne_doesntPassALargeOneThatCameBefore() throws Exception {
    Admission.Ticket first = memory.enter(60);
    Future<Admission.Ticket> large = coming(90);
    Future<Admission.Ticket> small = coming(10);
    assertFalse(large.isDone() || small.isDone());
    first.close();
    large.get(10, TimeUnit.SECONDS);
    small.get(10, TimeUnit.SECONDS);
  }

  @Test
  void oneThatNeedsMoreThanThereIs_isAlone() throws Exception {
    Admission.Ticket small = memory.enter(1);
    Future<Admission.Ticket> huge = coming(Long.MAX_VALUE);
    assertFalse(huge.isDone());
    small.close();
    Admission.Ticket alone = huge.get(10, TimeUnit.SECONDS);
    Future<Admission.Ticket> next = coming(0);
    assertFalse(next.isDone());
    alone.close();
    next.get(10, TimeUnit.SECONDS);
  }

  @Test
  void manyAtOnce_neverTakeMoreThanThereIs_andAllCome() throws Exception {
    AtomicLong taken = new AtomicLong();
    AtomicLong most = new AtomicLong();
    Random random = new Random(1);
    List<Future<?>> all = new ArrayList<>();
    for (int i = 0; i < 300; i++) {
      long need = random.nextInt(100) + 1;
      all.add(
          threads.submit(
              () -> {
                Admission.Ticket ticket = memory.enter(need);
                long now = taken.addAndGet(need);
                most.accumulateAndGet(now, Math::max);
                taken.addAndGet(-need);
                ticket.close();
              }));
    }
    for (Future<?> one : all) {
      one.get(30, TimeUnit.SECONDS);
    }
    assertTrue(most.get() <= 100, most + " at once");
    assertEquals(0, taken.get());
  }
}
