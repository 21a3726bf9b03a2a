package plyscape.cli.process;

/**
 * Ends a process that does another's work when that other is gone. One that is killed outright
 * can't take along what it started: a batch would run on unseen, and be in the next one's way.
 */
public final class ParentWatch {

  private static final String PROPERTY = "plyscape.parent";

  private ParentWatch() {}

  /** What Java is given so that it ends with this process. */
  public static String option() {
    return "-D" + PROPERTY + "=" + ProcessHandle.current().pid();
  }

  /** Begins to watch, in a process that was given the option; in any other does nothing. */
  public static void begin() {
    Long parent = Long.getLong(PROPERTY);
    if (parent != null) {
      ProcessHandle.of(parent).ifPresentOrElse(ParentWatch::watch, ParentWatch::end);
    }
  }

  private static void watch(ProcessHandle parent) {
    Thread watch =
        new Thread(
            () -> {
              parent.onExit().join();
              end();
            },
            "plyscape-parent");
    watch.setDaemon(true);
    watch.start();
  }

  private static void end() {
    System.exit(ExitCodes.OWN); // nobody waits for the code; what is half-written is cleared away
  }
}
