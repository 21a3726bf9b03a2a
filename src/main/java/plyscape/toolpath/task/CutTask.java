package plyscape.toolpath.task;

import java.util.List;
import plyscape.grid.Box;
import plyscape.machine.Machine;
import plyscape.machine.Tool;

/**
 * What is to be cut, with what, and how. Immutable.
 *
 * @param levels pockets, panel mm, nested; those of depth 0 and those that show nowhere are passed
 *     over
 * @param tools as listed
 * @param machine limits
 * @param carved the carved area, which holds every pocket
 * @param options how paths are laid
 */
public record CutTask(
    List<PocketLevel> levels, List<Tool> tools, Machine machine, Box carved, PathOptions options) {

  /** Copies the lists. */
  public CutTask {
    levels = List.copyOf(levels);
    tools = List.copyOf(tools);
  }

  /** With paths laid as the machine's settings say. */
  public static CutTask of(
      List<PocketLevel> levels, List<Tool> tools, Machine machine, Box carved) {
    return new CutTask(levels, tools, machine, carved, PathOptions.of(machine));
  }

  /** The same on a panel with slopes, as {@link RapidRoom#onSlopes}. */
  public CutTask onSlopes(double rimMm) {
    return new CutTask(levels, tools, machine, carved, options.onSlopes(rimMm));
  }
}
