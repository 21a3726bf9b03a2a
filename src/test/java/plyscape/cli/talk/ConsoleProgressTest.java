package plyscape.cli.talk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

class ConsoleProgressTest {

  private static final long SECOND = 1_000_000_000L;

  private final AtomicLong clock = new AtomicLong();
  private final List<String> drawn = new ArrayList<>();

  private ConsoleProgress progress() {
    return new ConsoleProgress(List.of("terrain", "regions", "files"), drawn::add, clock::get);
  }

  private String last() {
    return drawn.get(drawn.size() - 1).replace("\r\u001b[K", "");
  }

  @Test
  void stages_areCountedAndTimed() {
    ConsoleProgress progress = progress();
    progress.stage("terrain");
    assertEquals("1/3 terrain, 0 s", last());
    clock.addAndGet(2 * SECOND);
    progress.stage("regions");
    clock.addAndGet(SECOND);
    progress.tick();
    assertTrue(last().startsWith("2/3 regions, 1 s"), last());
    progress.done();
    assertEquals("", last());
    assertEquals("terrain 2.00 s, regions 1.00 s", progress.times());
  }

  /**
   * Usual shares are terrain 1.0, regions 1.5, files 0.8: at 2 s for terrain, 2 * (1.5 + 0.8) = 4.6
   * s are left.
   */
  @Test
  void timeLeft_followsThePaceSoFar() {
    ConsoleProgress progress = progress();
    progress.stage("terrain");
    clock.addAndGet(2 * SECOND);
    progress.stage("regions");
    assertEquals("2/3 regions, 0 s, about 5 s left", last());
  }

  @Test
  void nothingIsDrawn_withoutASink() {
    ConsoleProgress progress = new ConsoleProgress(List.of("terrain"), null, clock::get);
    progress.stage("terrain");
    clock.addAndGet(SECOND);
    progress.done();
    assertEquals("terrain 1.00 s", progress.times());
  }
}
