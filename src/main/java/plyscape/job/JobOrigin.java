package plyscape.job;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import plyscape.job.yaml.Setting;

/**
 * Where a job comes from. Immutable.
 *
 * @param folder that names of its files are given from: the job file's, else the terrain's; null
 *     for a job that no file was read for
 * @param settingsFiles the job file, if any, and the layup
 * @param settings from the command line
 * @param fingerprint of all that it was read from, {@link Fingerprint#NONE} until it is taken
 */
public record JobOrigin(
    Path folder, List<Path> settingsFiles, List<Setting> settings, Fingerprint fingerprint) {

  /** No file and no setting. */
  public static final JobOrigin NONE = new JobOrigin(null, List.of(), List.of(), Fingerprint.NONE);

  /** Copies the lists. */
  public JobOrigin {
    settingsFiles = List.copyOf(settingsFiles);
    settings = List.copyOf(settings);
    Objects.requireNonNull(fingerprint);
  }

  /** Of a file in whose folder the others are looked for. */
  static JobOrigin beside(Path file, List<Setting> settings) {
    Path folder = file.toAbsolutePath().normalize().getParent();
    return new JobOrigin(folder, List.of(), settings, Fingerprint.NONE);
  }

  /** The same with one more file that held settings. */
  JobOrigin alsoReadFrom(Path file) {
    List<Path> files = new ArrayList<>(settingsFiles);
    files.add(file);
    return new JobOrigin(folder, files, settings, fingerprint);
  }

  JobOrigin with(Fingerprint taken) {
    return new JobOrigin(folder, settingsFiles, settings, taken);
  }

  /**
   * A file's name from the job's folder with {@code /}, so that it is the same wherever the folder
   * lies; as given where there is no way from one to the other, as between drives.
   */
  public String nameOf(Path file) {
    if (folder == null) {
      return slashed(file);
    }
    Path whole = file.toAbsolutePath().normalize();
    return Objects.equals(folder.getRoot(), whole.getRoot())
        ? slashed(folder.relativize(whole))
        : slashed(file);
  }

  private static String slashed(Path path) {
    return path.toString().replace(path.getFileSystem().getSeparator(), "/");
  }
}
