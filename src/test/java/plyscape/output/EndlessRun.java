package plyscape.output;

import java.nio.file.Path;

/**
 * A process that replaces an output again and again until it is killed; the argument is the
 * directory.
 */
final class EndlessRun {

  static final int LAYERS = 30;

  private EndlessRun() {}

  /** Every file of a generation holds the same text, so that a mixture would show. */
  static String text(String generation) {
    return "plyscape-plan-1 " + generation + " " + "x".repeat(2000);
  }

  static void publish(Path target, String generation) {
    try (OutputDirectory out = OutputDirectory.open(target, OutputKind.PLAN, true)) {
      for (int i = 1; i <= LAYERS; i++) {
        out.write("layers/" + i + ".svg", text(generation));
      }
      out.write("plan.json", text(generation));
      out.publish();
    }
  }

  /** Runs for ever; says when it has begun. */
  public static void main(String[] args) {
    System.out.println("begun");
    System.out.flush();
    for (int generation = 0; ; generation++) {
      publish(Path.of(args[0]), Integer.toString(generation));
    }
  }
}
