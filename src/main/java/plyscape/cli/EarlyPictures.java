package plyscape.cli;

import java.util.IdentityHashMap;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.FutureTask;
import plyscape.plan.Plan;
import plyscape.region.Tiling;
import plyscape.render.PreviewPicture;
import plyscape.render.SectionPicture;

/**
 * Draws the pictures of a plan while its toolpaths are being planned: they show regions and faces
 * alone, and the planning of paths leaves a processor free for much of its time. For several jobs
 * at once.
 */
final class EarlyPictures {

  /** Pictures being drawn. */
  record Pair(FutureTask<byte[]> preview, FutureTask<byte[]> section) {

    byte[] previewPng() {
      return outcome(preview);
    }

    byte[] sectionPng() {
      return outcome(section);
    }
  }

  private final IdentityHashMap<Tiling, Pair> drawn = new IdentityHashMap<>();

  /** Begins to draw a plan whose regions stand. */
  void begin(Plan regions) {
    Pair pair = pair(regions);
    synchronized (drawn) {
      drawn.put(regions.tiling(), pair);
    }
  }

  /** The pictures of a plan, begun now if they weren't before. */
  Pair of(Plan plan) {
    Pair pair;
    synchronized (drawn) {
      pair = drawn.remove(plan.tiling());
    }
    return pair == null ? pair(plan) : pair;
  }

  private static Pair pair(Plan plan) {
    Pair pair =
        new Pair(
            new FutureTask<>(() -> PreviewPicture.png(plan)),
            new FutureTask<>(() -> SectionPicture.png(plan)));
    ForkJoinPool.commonPool().execute(pair.preview());
    ForkJoinPool.commonPool().execute(pair.section());
    return pair;
  }

  private static byte[] outcome(FutureTask<byte[]> task) {
    task.run(); // no wait for a free thread: drawn here unless it is being drawn
    return PoolRun.outcome(task);
  }
}
