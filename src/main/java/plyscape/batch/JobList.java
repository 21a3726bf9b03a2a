package plyscape.batch;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.files.InputFile;

/** A text file that lists jobs, one a line; empty lines and those that start with # say nothing. */
public final class JobList {

  private static final long MOST_BYTES = 16 << 20;
  private static final String WANTED = "give a text file with a job file a line";

  private JobList() {}

  /**
   * The job files, resolved against the list's folder, in its order. Whether they are there is seen
   * when each is read.
   *
   * @throws InputFault if the list can't be read, names what isn't a job file, or names none
   */
  public static List<Path> read(Path list) {
    String text = InputFile.text(list, MOST_BYTES, WANTED, "split the list");
    List<Path> jobs = new ArrayList<>();
    int number = 0;
    for (String raw : text.lines().toList()) {
      number++;
      String line = (number == 1 && raw.startsWith("\uFEFF") ? raw.substring(1) : raw).strip();
      if (!line.isEmpty() && !line.startsWith("#")) {
        jobs.add(job(list, number, line));
      }
    }
    if (jobs.isEmpty()) {
      throw new InputFault(Place.file(list.toString()), "it lists no job", WANTED);
    }
    return jobs;
  }

  private static Path job(Path list, int number, String line) {
    String lower = line.toLowerCase(Locale.ROOT);
    Place place = Place.at(list.toString(), number, 1);
    if (!lower.endsWith(".yaml") && !lower.endsWith(".yml")) {
      throw new InputFault(
          place, "found \"" + line + "\"", "wanted a job file that ends in .yaml, one a line");
    }
    try {
      return list.resolveSibling(line);
    } catch (InvalidPathException e) {
      throw new InputFault(place, "found \"" + line + "\"", "that can't be a file name", e);
    }
  }
}
