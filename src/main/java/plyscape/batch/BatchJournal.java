package plyscape.batch;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import plyscape.fault.IoReason;
import plyscape.fault.JobFault;

/**
 * Keeps {@code batch.json} up to date while jobs end, so that a run that is stopped has one, too:
 * for jobs that it hadn't come to it says how they went before. Holds the folder's lock for its
 * share. For use by several threads.
 */
public final class BatchJournal implements AutoCloseable {

  /** Of the time that a run takes, no more than one part in so many goes into writing the file. */
  private static final int WRITING_SHARE = 20;

  private final Path directory;
  private final Share share;
  private final List<String> jobs;
  private final FolderLock lock;
  private final Map<String, Double> secondsBefore = new HashMap<>();
  private final Map<String, JobResult> results = new TreeMap<>();
  private long nextWriteNanos = System.nanoTime();
  private JobFault trouble;

  private BatchJournal(Path directory, Share share, List<String> jobs, FolderLock lock) {
    this.directory = directory;
    this.share = share;
    this.jobs = List.copyOf(jobs);
    this.lock = lock;
  }

  /**
   * Starts one.
   *
   * @param directory where the outputs' folders are; made if it isn't there
   * @param jobs names of all jobs of the list
   * @throws JobFault if it can't be written there, another run is at work there, or a file of its
   *     name is something else
   */
  public static BatchJournal open(Path directory, Share share, List<String> jobs) {
    BatchFile.refuseOther(directory.resolve(BatchFile.name(share)));
    try {
      Files.createDirectories(directory);
    } catch (IOException e) {
      throw new JobFault(
          "can't write to " + directory + ": " + IoReason.of(e), "choose another directory");
    }
    FolderLock lock = FolderLock.take(directory, BatchFile.name(share));
    try {
      BatchJournal journal = new BatchJournal(directory, share, jobs, lock);
      journal.readEarlier();
      journal.write();
      return journal;
    } catch (RuntimeException e) {
      lock.close();
      throw e;
    }
  }

  private void readEarlier() {
    for (BatchFile file : filesIn(directory)) {
      file.results().stream()
          .filter(JobResult::done)
          .forEach(one -> secondsBefore.merge(one.job(), one.seconds(), Math::max));
    }
    BatchFile own = BatchFile.read(directory.resolve(BatchFile.name(share)));
    if (own != null) {
      Set<String> ours = new HashSet<>(share.of(jobs));
      own.results().stream()
          .filter(result -> ours.contains(result.job()))
          .forEach(result -> results.put(result.job(), result.ofEarlierRun()));
    }
  }

  private static List<BatchFile> filesIn(Path directory) {
    List<BatchFile> files = new ArrayList<>();
    try (DirectoryStream<Path> paths = Files.newDirectoryStream(directory, "batch*.json")) {
      for (Path path : paths) {
        BatchFile file = BatchFile.read(path);
        if (file != null) {
          files.add(file);
        }
      }
    } catch (IOException e) {
      return List.of(); // only seconds are lost
    }
    return files;
  }

  /**
   * Takes how a job went.
   *
   * @param unchanged whether an output of an earlier run still held
   * @return the same, with the seconds of that run if so
   */
  public synchronized JobResult took(JobResult result, boolean unchanged) {
    JobResult kept =
        unchanged ? result.withSeconds(secondsBefore.getOrDefault(result.job(), 0.0)) : result;
    if (ending()) {
      return kept; // it may have failed for that alone
    }
    results.put(kept.job(), kept);
    long start = System.nanoTime();
    if (start - nextWriteNanos >= 0) {
      writeOrRemember();
      nextWriteNanos = start + WRITING_SHARE * (System.nanoTime() - start);
    }
    return kept;
  }

  /** Whether the process has been told to end: outputs that are at work are then broken off. */
  private static boolean ending() {
    Thread none = new Thread(() -> {});
    try {
      Runtime.getRuntime().addShutdownHook(none);
      Runtime.getRuntime().removeShutdownHook(none);
      return false;
    } catch (IllegalStateException e) {
      return true;
    }
  }

  /** A full disk mustn't end the jobs that are at work: it is told at the end, if it stays full. */
  private void writeOrRemember() {
    try {
      write();
      trouble = null;
    } catch (JobFault e) {
      trouble = e;
    }
  }

  private void write() {
    new BatchFile(share, jobs, List.copyOf(results.values())).write(directory);
  }

  /**
   * Writes the last state.
   *
   * @throws JobFault if it can't be written
   */
  @Override
  public synchronized void close() {
    try {
      writeOrRemember();
      if (trouble != null) {
        throw trouble;
      }
    } finally {
      lock.close();
    }
  }
}
