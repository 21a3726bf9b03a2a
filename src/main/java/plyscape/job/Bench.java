package plyscape.job;

import java.util.List;
import java.util.Objects;
import plyscape.layup.CutAllowance;
import plyscape.machine.Machine;
import plyscape.machine.Tool;

/**
 * What stands in the shop, without any terrain: a job's tools (at least one), machine and
 * allowance. Immutable.
 */
public record Bench(List<Tool> tools, Machine machine, CutAllowance allowance) {

  /** Copies the list and checks that there is a tool. */
  public Bench {
    Objects.requireNonNull(machine);
    Objects.requireNonNull(allowance);
    tools = List.copyOf(tools);
    if (tools.isEmpty()) {
      throw new IllegalArgumentException("a bench without tools");
    }
  }
}
