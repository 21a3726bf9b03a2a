package plyscape.batch;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import plyscape.fault.InputFault;
import plyscape.fault.Place;

/**
 * What is wrong with a table, all of it at once: who fills in five hundred rows wants to mend them
 * in one go. A fault of several rows, as of a column's name, counts once.
 */
final class TableFaults {

  /** More lines than this nobody reads before mending the first. */
  static final int MOST = 20;

  private final Map<String, InputFault> faults = new LinkedHashMap<>();

  void add(Place place, String found, String wanted) {
    add(new InputFault(place, found, wanted));
  }

  void add(InputFault fault) {
    faults.putIfAbsent(fault.getMessage(), fault);
  }

  /** All, by their places. */
  List<InputFault> list() {
    return faults.values().stream()
        .sorted(
            Comparator.comparing((InputFault fault) -> fault.place().file())
                .thenComparing(fault -> fault.place().line())
                .thenComparing(fault -> fault.place().column()))
        .toList();
  }

  /**
   * Ends it if anything is wrong.
   *
   * @throws InputFault one fault a line, the first ones
   */
  void refuse() {
    if (faults.size() == 1) {
      throw faults.values().iterator().next();
    }
    if (!faults.isEmpty()) {
      List<String> lines = list().stream().map(InputFault::getMessage).toList();
      String more = lines.size() > MOST ? "\nand " + (lines.size() - MOST) + " more" : "";
      throw new InputFault(
          Place.file(""),
          lines.size()
              + " faults, nothing was planned\n"
              + lines.stream().limit(MOST).collect(Collectors.joining("\n"))
              + more,
          "");
    }
  }
}
