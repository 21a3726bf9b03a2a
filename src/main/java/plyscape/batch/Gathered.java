package plyscape.batch;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import plyscape.fault.IoReason;
import plyscape.fault.JobFault;

/**
 * What all who shared a list have made of it. Immutable.
 *
 * @param list names of all jobs, in the list's order
 * @param entries a job's, in that order
 */
public record Gathered(List<String> list, List<Entry> entries) {

  private static final Pattern NAME = Pattern.compile("batch(-\\d+-of-\\d+)?\\.json");

  /**
   * One job.
   *
   * @param result null if nobody has it
   * @param folder of its output; null if it isn't there
   */
  public record Entry(String job, JobResult result, Path folder) {

    /** Whether it is done and its output is there. */
    public boolean whole() {
      return result != null && !result.earlier() && result.done() && folder != null;
    }

    /** Why it isn't whole, "" when it is. */
    public String trouble() {
      if (result == null) {
        return "not planned yet";
      }
      if (result.earlier()) {
        return "the last run was stopped before it";
      }
      if (!result.done()) {
        return result.message();
      }
      return folder == null ? "its output isn't there, or not all of it" : "";
    }
  }

  private record Written(Path directory, FileTime when, BatchFile file) {}

  /** Copies the lists. */
  public Gathered {
    list = List.copyOf(list);
    entries = List.copyOf(entries);
  }

  /**
   * Reads the results in some folders; of two about one job that of the later file counts. The list
   * is that of the latest file; those of an earlier list are passed over where their folder has one
   * of this list, too.
   *
   * @throws JobFault if a folder has none, or none of that list
   */
  public static Gathered of(List<Path> directories) {
    List<Written> files = new ArrayList<>();
    for (Path directory : directories) {
      List<Written> found = written(directory);
      if (found.isEmpty()) {
        throw new JobFault(
            directory + " holds no batch.json",
            "give the folder that plan --list was told to write to");
      }
      files.addAll(found);
    }
    files.sort(Comparator.comparing(Written::when));
    List<String> list = files.get(files.size() - 1).file().jobs();
    files.removeIf(one -> !one.file().jobs().equals(list));
    for (Path directory : directories) {
      if (files.stream().noneMatch(one -> one.directory().equals(directory))) {
        throw new JobFault(
            directory + " is of another list than the others",
            "gather what was made from one list; where it grew, plan each share again");
      }
    }
    Map<String, Entry> known = new TreeMap<>();
    for (Written one : files) {
      for (JobResult result : one.file().results()) {
        known.merge(result.job(), entry(one.directory(), result), Gathered::later);
      }
    }
    return new Gathered(
        list,
        list.stream().map(job -> known.getOrDefault(job, new Entry(job, null, null))).toList());
  }

  private static Entry entry(Path directory, JobResult result) {
    Path folder = directory.resolve(result.job());
    return new Entry(result.job(), result, FinishedOutput.whole(folder) ? folder : null);
  }

  /** A merged file tells of outputs that lie in other folders: that doesn't hide those. */
  private static Entry later(Entry before, Entry after) {
    return before.whole() && after.result().done() && after.folder() == null ? before : after;
  }

  private static List<Written> written(Path directory) {
    try (Stream<Path> entries = Files.list(directory)) {
      List<Written> found = new ArrayList<>();
      for (Path file :
          entries
              .filter(path -> NAME.matcher(path.getFileName().toString()).matches())
              .sorted()
              .toList()) {
        BatchFile read = BatchFile.read(file);
        if (read == null) {
          throw new JobFault(file + " isn't of a batch", "move it away, or plan again");
        }
        found.add(new Written(directory, Files.getLastModifiedTime(file), read));
      }
      return found;
    } catch (IOException e) {
      throw new JobFault("can't read " + directory + ": " + IoReason.of(e), "give a folder");
    }
  }

  /** Jobs that aren't there, in the list's order. */
  public List<Entry> missing() {
    return entries.stream().filter(entry -> !entry.whole()).toList();
  }

  /** All results in one. */
  public BatchFile merged() {
    return new BatchFile(
        Share.ALL,
        list,
        entries.stream().filter(e -> e.result() != null).map(Entry::result).toList());
  }
}
