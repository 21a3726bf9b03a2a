package plyscape.files;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import plyscape.text.Template;

/**
 * The hidden names under which an output lies while it is put into place, and what a run leaves
 * that is killed between its last two steps: the earlier output set aside, the new one not yet in
 * place.
 */
public final class BrokenSwap {

  /** What stands between a target's name and a run's own key in hidden names. */
  public static final String MARK = ".plyscape-";

  private BrokenSwap() {}

  /** How the hidden names for a target begin. */
  public static String prefix(String target) {
    return "." + target + MARK;
  }

  /**
   * Where both outputs lie and what to do, a clause for a message; "" when nothing was broken off.
   *
   * @param folder in which the target should be
   * @param target its name
   */
  static String halves(Path folder, String target) {
    String prefix = prefix(target);
    try (Stream<Path> files = Files.list(folder)) {
      List<String> names =
          files
              .map(file -> file.getFileName().toString())
              .filter(name -> name.startsWith(prefix))
              .sorted()
              .toList();
      for (String old : names) {
        String part = old.replaceFirst("\\.old$", ".part");
        if (old.endsWith(".old") && names.contains(part)) {
          return Template.fill(
              "a run was broken off while it replaced \"%s\": the earlier output is \"%s\" and the"
                  + " new one \"%s\" in that folder; rename the one that you want, or run plan"
                  + " again, which begins by putting the earlier one back",
              target, old, part);
        }
      }
      return "";
    } catch (IOException e) {
      return "";
    }
  }
}
