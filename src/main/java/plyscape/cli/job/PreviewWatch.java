package plyscape.cli.job;

import java.io.IOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collection;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Supplier;
import plyscape.cli.process.ExitCodes;
import plyscape.cli.talk.Console;
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
  private final Set<Path> watched = new TreeSet<>();

  /** Of a job; {@code named} are the files named on the command line. */
  PreviewWatch(Console console, JobInputs.Source source, Collection<Path> named) {
    this.console = console;
    this.source = source;
    this.named = named;
  }

  /**
   * Draws, waits, draws again; comes back when the thread is interrupted. A fault is reported and
   * waits for the next change.
   */
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

  /**
   * What there is to watch; it only grows, so that a job that can't be read right now doesn't lose
   * its files.
   */
  private Set<Path> files() {
    try {
      Job job = source.read(new Warnings());
      watched.add(job.terrain().file());
      job.zones().stream().map(ZoneSpec::file).forEach(watched::add);
    } catch (Fault e) {
      // Said when it is drawn.
    }
    for (Path file : named) {
      watched.add(file);
      Path parent = file.toAbsolutePath().getParent();
      try (DirectoryStream<Path> yaml = Files.newDirectoryStream(parent, "*.{yaml,yml}")) {
        yaml.forEach(watched::add); // the layup stands beside the job, or is named
      } catch (IOException | DirectoryIteratorException e) {
        console.talk("can't look into " + parent + ", so only the files named are watched");
      }
    }
    return watched;
  }
}
