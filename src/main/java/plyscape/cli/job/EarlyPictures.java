package plyscape.cli.job;

import java.util.IdentityHashMap;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.FutureTask;
import plyscape.cli.process.PoolRun;
import plyscape.plan.Landscape;
import plyscape.region.Tiling;
import plyscape.render.PreviewPicture;
import plyscape.render.SectionPicture;
import plyscape.report.HtmlReport;

/**
 * Draws the pictures of a plan while its toolpaths are being planned: they show regions and faces
 * alone, and the planning of paths leaves a processor free for much of its time. For several jobs
 * at once.
 */
final class EarlyPictures {

  /** Pictures being drawn. */
  record Drawing(FutureTask<byte[]> preview, FutureTask<byte[]> section, FutureTask<byte[]> page) {

    byte[] previewPng() {
      return outcome(preview);
    }

    byte[] sectionPng() {
      return outcome(section);
    }

    byte[] pagePng() {
      return outcome(page);
    }
  }

  private final IdentityHashMap<Tiling, Drawing> drawn = new IdentityHashMap<>();

  /** Begins to draw a plan whose regions stand. */
  void begin(Landscape regions) {
    Drawing drawing = drawing(regions);
    synchronized (drawn) {
      drawn.put(regions.tiling(), drawing);
    }
  }

  /** Lets go of the pictures of a plan that came to nothing. */
  void forget(Landscape plan) {
    synchronized (drawn) {
      drawn.remove(plan.tiling());
    }
  }

  /** The pictures of a plan, begun now if they weren't before. */
  Drawing of(Landscape plan) {
    Drawing drawing;
    synchronized (drawn) {
      drawing = drawn.remove(plan.tiling());
    }
    return drawing == null ? drawing(plan) : drawing;
  }

  private static Drawing drawing(Landscape plan) {
    Drawing drawing =
        new Drawing(
            new FutureTask<>(() -> PreviewPicture.png(plan)),
            new FutureTask<>(() -> SectionPicture.png(plan)),
            new FutureTask<>(() -> HtmlReport.picture(plan)));
    ForkJoinPool.commonPool().execute(drawing.preview());
    ForkJoinPool.commonPool().execute(drawing.section());
    ForkJoinPool.commonPool().execute(drawing.page());
    return drawing;
  }

  private static byte[] outcome(FutureTask<byte[]> task) {
    task.run(); // no wait for a free thread: drawn here unless it is being drawn
    return PoolRun.outcome(task);
  }
}
