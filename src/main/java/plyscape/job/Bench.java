package plyscape.job;

import java.util.List;
import plyscape.layup.CutAllowance;
import plyscape.machine.Machine;
import plyscape.machine.Tool;

/**
 * What stands in the shop, without any terrain: a job's tools (at least one), machine and
 * allowance. Immutable.
 */
public record Bench(List<Tool> tools, Machine machine, CutAllowance allowance) {}
