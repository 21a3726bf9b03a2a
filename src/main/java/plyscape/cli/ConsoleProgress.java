package plyscape.cli;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.LongSupplier;
import plyscape.plan.Progress;
import plyscape.text.Numbers;

/** Shows the running stage in one line of a terminal, and keeps the time of each for the summary. */
final class ConsoleProgress implements Progress {

  private final Console console;
  private final boolean shown;
  private final LongSupplier nanoClock;
  private final Map<String, Long> nanos = new LinkedHashMap<>();
  private String running = "";
  private long since;

  /** Shown only when asked for and stderr is a terminal. */
  ConsoleProgress(Console console, boolean wanted, LongSupplier nanoClock) {
    this.console = console;
    this.shown = wanted && console.errTerminal();
    this.nanoClock = nanoClock;
  }

  @Override
  public void stage(String name) {
    end();
    running = name;
    since = nanoClock.getAsLong();
    if (shown) {
      console.err().print("\r\u001b[K" + name + " ...");
      console.err().flush();
    }
  }

  @Override
  public void done() {
    end();
    if (shown) {
      console.err().print("\r\u001b[K");
      console.err().flush();
    }
  }

  private void end() {
    if (!running.isEmpty()) {
      nanos.merge(running, nanoClock.getAsLong() - since, Long::sum);
      running = "";
    }
  }

  /** Such as {@code terrain 0.42 s, regions 1.10 s}; "" when no stage ran. */
  String times() {
    StringBuilder out = new StringBuilder();
    nanos.forEach(
        (stage, time) ->
            out.append(out.isEmpty() ? "" : ", ").append(stage).append(' ').append(Numbers.fixed(time / 1e9, 2)).append(" s"));
    return out.toString();
  }
}
