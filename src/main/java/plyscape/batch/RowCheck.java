package plyscape.batch;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import plyscape.fault.Fault;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.job.yaml.Setting;

/**
 * Looks at all rows of a table before the first is planned: reads each as a job, and where a cell
 * is refused reads on without it, so that all faults are found. 1000 rows take about a second.
 */
public final class RowCheck {

  private final Consumer<List<Setting>> reader;
  private final TableFaults faults = new TableFaults();

  private RowCheck(Consumer<List<Setting>> reader) {
    this.reader = reader;
  }

  /**
   * Checks a table.
   *
   * @param reader reads the job that the settings of a row make
   * @throws InputFault if anything is wrong with the table or its values, all that is found in one
   *     message
   */
  public static void of(JobTable table, Consumer<List<Setting>> reader) {
    RowCheck check = new RowCheck(reader);
    table.faults().forEach(check.faults::add);
    table.rows().forEach(check::row);
    check.faults.refuse();
  }

  private void row(JobTable.Row row) {
    List<Setting> left = new ArrayList<>(row.settings());
    for (InputFault fault = fault(left); fault != null; fault = fault(left)) {
      Optional<Setting> refused = setting(left, fault.place());
      if (refused.isEmpty()) {
        if (left.size() == row.settings().size()) { // else it may be for want of the refused ones
          faults.add(fault);
        }
        return;
      }
      faults.add(fault);
      left.remove(refused.get());
    }
  }

  private InputFault fault(List<Setting> settings) {
    try {
      reader.accept(settings);
      return null;
    } catch (InputFault e) {
      return e;
    } catch (Fault e) {
      return null; // not the input's: the run itself tells of it
    }
  }

  private static Optional<Setting> setting(List<Setting> settings, Place place) {
    return settings.stream()
        .filter(one -> same(one.valuePlace(), place) || same(one.keyPlace(), place))
        .findFirst();
  }

  private static boolean same(Place one, Place other) {
    return one.file().equals(other.file())
        && one.line() == other.line()
        && one.column() == other.column();
  }
}
