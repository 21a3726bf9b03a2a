package plyscape.cli.job;

import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import plyscape.cli.process.ParentWatch;
import plyscape.fault.Fault;
import plyscape.fault.Warnings;
import plyscape.job.Job;

/**
 * Runs a long job in a Java of its own that has the second compiler. The launcher starts without
 * it, since it pays only in runs of more than about ten seconds: sculpted faces, or several jobs
 * (measured in src/bench/README.md). Only a job that has been read tells which it is, and a Java
 * that runs can't be given another compiler.
 */
final class SecondCompiler {

  /** The launcher sets it to {@link #FIRST} when it has left the second compiler out. */
  static final String PROPERTY = "plyscape.compiler";

  static final String FIRST = "first";

  /** The program's entry, by name: commands don't know it. */
  static final String MAIN = "plyscape.cli.Main";

  /** What the launcher adds for the first compiler alone. */
  private static final List<String> SHORT =
      List.of("-XX:TieredStopAtLevel=1", "-XX:Tier3BackEdgeThreshold=4000");

  /** The second compiler has less to do when less is inlined. */
  private static final List<String> LONG =
      List.of(
          "-XX:InlineSmallCode=1000",
          "-XX:MaxInlineLevel=9",
          "-XX:FreqInlineSize=200",
          "-XX:TypeProfileLevel=0");

  /** More jobs or panels than this take so long that it pays. */
  private static final int SHORT_JOBS = 3;

  private SecondCompiler() {}

  /** Whether the launcher left it out and these jobs are better off with it. */
  static boolean missing(List<JobInputs.Source> jobs) {
    return FIRST.equals(System.getProperty(PROPERTY)) && pays(jobs);
  }

  static boolean pays(List<JobInputs.Source> jobs) {
    return jobs.size() > SHORT_JOBS || jobs.stream().anyMatch(SecondCompiler::isLong);
  }

  /** A job that can't be read isn't long: the run itself says what is wrong with it. */
  private static boolean isLong(JobInputs.Source source) {
    try {
      Job job = source.read(new Warnings());
      int panels = job.panel().columns() * job.panel().rows();
      return job.surface().sculpted() || panels > SHORT_JOBS;
    } catch (Fault e) {
      return false;
    }
  }

  /**
   * Runs the same command line in a Java with both compilers, on this process's own streams. When
   * this process is told to end, that one is too, and is waited for, so that it leaves nothing
   * half-written.
   *
   * @return its exit code
   */
  static int run(List<String> arguments) {
    List<String> options =
        new ArrayList<>(ManagementFactory.getRuntimeMXBean().getInputArguments());
    options.add(ParentWatch.option());
    Path java = Path.of(System.getProperty("java.home"), "bin", "java");
    ProcessBuilder builder =
        new ProcessBuilder(
            command(java, options, System.getProperty("java.class.path"), arguments));
    try {
      Process process = builder.inheritIO().start();
      Runtime.getRuntime().addShutdownHook(new Thread(() -> end(process)));
      return process.waitFor();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("interrupted", e);
    }
  }

  /** The command line of a Java with both compilers. */
  static List<String> command(
      Path java, List<String> options, String classPath, List<String> arguments) {
    List<String> command = new ArrayList<>();
    command.add(java.toString());
    options.stream()
        .filter(option -> !SHORT.contains(option) && !option.startsWith("-D" + PROPERTY + "="))
        .forEach(command::add);
    command.addAll(LONG);
    boolean packed = classPath.endsWith(".jar") && !classPath.contains(File.pathSeparator);
    command.addAll(
        packed
            ? List.of("-jar", classPath) // its manifest counts
            : List.of("-cp", classPath, MAIN));
    command.addAll(arguments);
    return command;
  }

  private static void end(Process process) {
    process.destroy();
    process.onExit().join();
  }
}
