package plyscape.job;

import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.files.FileDigest;
import plyscape.job.yaml.Setting;

/**
 * What decides a job's output: every file that is read for it, and everything that is asked of the
 * program. Two jobs of one fingerprint have the same output. Immutable.
 *
 * @param inputs files by their names from the job's folder, sorted
 * @param optionsSha256 digest of version, options and settings; "" where none was taken
 * @param moreFiles names of files that are asked for beyond the usual ones, {@code *} for each
 *     layer's
 */
public record Fingerprint(List<FileDigest> inputs, String optionsSha256, List<String> moreFiles) {

  /** None was taken. */
  public static final Fingerprint NONE = new Fingerprint(List.of(), "", List.of());

  /** Copies the lists. */
  public Fingerprint {
    inputs = List.copyOf(inputs);
    moreFiles = List.copyOf(moreFiles);
  }

  /**
   * Takes a job's fingerprint: reads all its files through.
   *
   * @param options text of all that is asked for besides the job's settings, the version with it
   * @param moreFiles names of files beyond the usual ones
   * @throws plyscape.fault.InputFault if a file can't be read
   */
  public static Fingerprint of(Job job, String options, List<String> moreFiles) {
    JobOrigin origin = job.origin();
    List<FileDigest> inputs =
        JobFiles.of(job).stream()
            .map(file -> FileDigest.of(file, origin.nameOf(file)))
            .sorted(Comparator.comparing(FileDigest::path))
            .toList();
    StringBuilder text = new StringBuilder(options);
    text.append("\nmore files ").append(String.join(" ", moreFiles));
    for (Setting setting : origin.settings()) {
      text.append('\n').append(setting.key()).append('=').append(setting.value());
    }
    return new Fingerprint(inputs, FileDigest.ofText(text.toString()), moreFiles);
  }

  /**
   * Refuses what was made of files that have been changed meanwhile.
   *
   * @throws InputFault if one of the files isn't what it was
   */
  public void requireUnchanged(Job job) {
    for (FileDigest input : inputs) {
      Path folder = job.origin().folder();
      Path file = folder == null ? Path.of(input.path()) : folder.resolve(input.path());
      if (!FileDigest.of(file, input.path()).equals(input)) {
        throw new InputFault(
            Place.file(file.toString()),
            "it was changed while the job was planned",
            "plan it again");
      }
    }
  }

  /** The job with this fingerprint. */
  public Job on(Job job) {
    return job.from(job.origin().with(this));
  }
}
