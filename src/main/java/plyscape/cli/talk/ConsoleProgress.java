package plyscape.cli.talk;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import plyscape.plan.Progress;
import plyscape.text.Numbers;

/**
 * How a run gets on. On a terminal: the stages first, then one line that is drawn over, with the
 * running stage, its time and about how long the rest will take. Keeps the time of each stage for
 * the summary, shown or not.
 */
public final class ConsoleProgress implements Progress, AutoCloseable {

  /**
   * Usual share of each stage in a run, measured on the bundled valley; only their proportions
   * matter, and only for the guess at the time that is left.
   */
  private static final Map<String, Double> USUAL =
      Map.of(
          "settings", 0.1,
          "terrain", 1.0,
          "zones", 0.4,
          "regions", 1.5,
          "toolpaths", 3.0,
          "G-code", 0.4,
          "simulation", 2.0,
          "lower bound", 0.4,
          "files", 0.8);

  private static final long REDRAW_MILLIS = 250;
  private static final String WIPE = "\r\u001b[K";

  private final List<String> stages;
  private final Consumer<String> sink;
  private final LongSupplier nanoClock;
  private final Map<String, Long> nanos = new LinkedHashMap<>();
  private ScheduledExecutorService ticker;
  private String running = "";
  private long since;

  /** Which of several panels has its turn, "" before the first. */
  private String panel = "";

  private int panelsDone;
  private int panelsLeft;
  private long panelsSince;

  /**
   * Makes one that keeps still until it is ticked.
   *
   * @param stages names of all stages, in order
   * @param sink takes what is drawn; null to show nothing
   */
  ConsoleProgress(List<String> stages, Consumer<String> sink, LongSupplier nanoClock) {
    this.stages = stages;
    this.sink = sink;
    this.nanoClock = nanoClock;
  }

  /** One for a console: shown only when asked for and stderr is a terminal; draws by itself. */
  public static ConsoleProgress on(Console console, boolean wanted, List<String> stages) {
    if (!wanted || !console.errTerminal()) {
      return new ConsoleProgress(stages, null, System::nanoTime);
    }
    Consumer<String> sink =
        text -> {
          console.err().print(text);
          console.err().flush();
        };
    ConsoleProgress progress = new ConsoleProgress(stages, sink, System::nanoTime);
    progress.begin();
    return progress;
  }

  private void begin() {
    sink.accept("stages: " + String.join(", ", stages) + "\n");
    ticker =
        Executors.newSingleThreadScheduledExecutor(
            work -> {
              Thread thread = new Thread(work, "plyscape-progress");
              thread.setDaemon(true);
              return thread;
            });
    var unused =
        ticker.scheduleWithFixedDelay(
            this::tick, REDRAW_MILLIS, REDRAW_MILLIS, TimeUnit.MILLISECONDS);
  }

  @Override
  public synchronized void stage(String name) {
    end();
    running = name;
    since = nanoClock.getAsLong();
    tick();
  }

  @Override
  public synchronized void panel(String name, int number, int of) {
    panel = name + " (" + number + " of " + of + "), ";
    panelsDone = number - 1;
    panelsLeft = of - panelsDone;
    panelsSince = panelsDone == 0 ? nanoClock.getAsLong() : panelsSince;
  }

  @Override
  public synchronized void done() {
    end();
    if (sink != null) {
      sink.accept(WIPE);
    }
  }

  @Override
  public void close() {
    if (ticker != null) {
      ticker.shutdownNow();
    }
  }

  /** Draws the line anew. */
  synchronized void tick() {
    if (sink == null || running.isEmpty()) {
      return;
    }
    long now = nanoClock.getAsLong() - since;
    String place =
        stages.contains(running) ? (stages.indexOf(running) + 1) + "/" + stages.size() + " " : "";
    sink.accept(
        WIPE + place + panel + running + ", " + Numbers.fixed(now / 1e9, 0) + " s" + left(now));
  }

  /** The stages that have ended tell how fast this run is against the usual shares. */
  private String left(long runningNanos) {
    if (panelsDone > 0) {
      double each = (nanoClock.getAsLong() - panelsSince) / 1e9 / panelsDone;
      return ", about " + Numbers.fixed(each * panelsLeft, 0) + " s left";
    }
    double spent = runningNanos;
    double usualSpent = 0;
    for (Map.Entry<String, Long> ended : nanos.entrySet()) {
      spent += ended.getValue();
      usualSpent += usual(ended.getKey());
    }
    double usualLeft =
        stages.stream().filter(stage -> !nanos.containsKey(stage)).mapToDouble(this::usual).sum();
    if (usualSpent == 0) {
      return "";
    }
    double pace = Math.max((spent - runningNanos) / usualSpent, runningNanos / usual(running));
    double seconds = Math.max(0, pace * usualLeft - runningNanos) / 1e9;
    return seconds < 2 ? "" : ", about " + Numbers.fixed(seconds, 0) + " s left";
  }

  private double usual(String stage) {
    return USUAL.getOrDefault(stage, 1.0);
  }

  private void end() {
    if (!running.isEmpty()) {
      nanos.merge(running, nanoClock.getAsLong() - since, Long::sum);
      running = "";
    }
  }

  /** Such as {@code terrain 0.42 s, regions 1.10 s}; "" when no stage ran. */
  public synchronized String times() {
    StringBuilder out = new StringBuilder();
    nanos.forEach(
        (stage, time) -> {
          out.append(out.isEmpty() ? "" : ", ").append(stage).append(' ');
          out.append(Numbers.fixed(time / 1e9, 2)).append(" s");
        });
    return out.toString();
  }
}
