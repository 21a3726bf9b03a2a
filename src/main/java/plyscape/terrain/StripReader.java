package plyscape.terrain;

import java.io.IOException;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import plyscape.terrain.GroundRaster.Window;

/**
 * Reads a window strip by strip, in order from the south, and the next strip while the caller is
 * busy with the last one. At most two strips are held.
 */
final class StripReader implements AutoCloseable {

  private final GroundRaster ground;
  private final List<Window> strips;
  private final ExecutorService ahead;
  private int next;
  private Future<double[]> coming;

  StripReader(GroundRaster ground, Window window) {
    this.ground = ground;
    this.strips = ground.strips(window);
    this.ahead =
        Executors.newSingleThreadExecutor(
            task -> {
              Thread thread = new Thread(task, "strips");
              thread.setDaemon(true);
              return thread;
            });
    begin();
  }

  private void begin() {
    Window strip = next < strips.size() ? strips.get(next) : null;
    coming = strip == null ? null : ahead.submit(() -> ground.read(strip));
  }

  boolean hasNext() {
    return next < strips.size();
  }

  /**
   * The next strip.
   *
   * @throws IOException when the file can't be read
   */
  Strip next() throws IOException {
    Window strip = strips.get(next++);
    try {
      double[] values = coming.get();
      begin();
      return new Strip(strip, values);
    } catch (ExecutionException e) {
      if (e.getCause() instanceof IOException io) {
        throw io;
      }
      if (e.getCause() instanceof RuntimeException known) {
        throw known;
      }
      if (e.getCause() instanceof Error error) {
        throw error;
      }
      throw new IllegalStateException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("reading was interrupted", e);
    }
  }

  /** Waits for a strip that is on its way, so that the file may be closed. */
  @Override
  public void close() {
    if (coming != null) {
      coming.cancel(false);
    }
    ahead.shutdown();
    try {
      ahead.awaitTermination(1, java.util.concurrent.TimeUnit.MINUTES);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /**
   * A strip and what it holds.
   *
   * @param window where it lies
   * @param values row by row from the south; NaN where there is none
   */
  record Strip(Window window, double[] values) {}
}
