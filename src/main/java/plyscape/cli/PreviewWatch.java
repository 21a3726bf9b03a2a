package plyscape.cli;

import java.nio.file.Path;
import java.util.Collection;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Supplier;
import plyscape.fault.Fault;
import plyscape.fault.Warnings;
import plyscape.job.Job;
import plyscape.job.ZoneSpec;

/** Draws a preview again whenever one of its job's files changes, until it's stopped. */
final class PreviewWatch {

  private static final long PAUSE_MS = 300;
  private static final String CLEAR = "\u001b[2J\u001b[H";

  private final Console console;
  private final JobInputs.Source source;
  private final Collection<Path> named;

  /** Of a job; {@code named} are the files named on the command line. */
  PreviewWatch(Console console, JobInputs.Source source, Collection<Path> named) {
    this.console = console;
    this.source = source;
    this.named = named;
  }

  /** Draws, waits, draws again; comes back when the thread is interrupted. A fault is told and waits for the next change. */
  int run(Supplier<Integer> draw) {
    int exit = ExitCodes.DONE;
    while (true) {
      // What to watch is looked up before drawing: a change while drawing is seen afterwards.
      FileWatch watch = new FileWatch(files(), PAUSE_MS);
      try {
        exit = draw.get();
      } catch (Fault e) {
        exit = ExitCodes.of(e);
        console.fault(ExitCodes.message(e));
      }
      console.talk("watching " + source.name() + "; Ctrl-C stops");
      try {
        watch.await();
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        return exit;
      }
      if (console.outTerminal()) {
        console.result(CLEAR);
      }
    }
  }

  private Set<Path> files() {
    Set<Path> files = new TreeSet<>(named);
    try {
      Job job = source.read(new Warnings());
      files.add(job.terrain().file());
      job.zones().stream().map(ZoneSpec::file).forEach(files::add);
      for (Path file : named) {
        Path layup = file.resolveSibling(job.layup().file());
        if (layup.toFile().isFile()) {
          files.add(layup);
        }
      }
    } catch (Fault e) {
      // Told when it is drawn; until it's mended, the named files are watched.
    }
    return files;
  }
}
