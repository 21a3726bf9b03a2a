package plyscape.recheck;

import java.util.List;
import plyscape.machine.Machine;
import plyscape.machine.Tool;

/**
 * Machine and tools that are known from elsewhere, for programs whose heads don't say, or shouldn't
 * be believed.
 *
 * @param machine the router, or null where the heads decide
 * @param tools of a job, by name
 * @param asked tools of the programs in their order, as {@code --tool} gives them
 */
public record KnownTools(Machine machine, List<Tool> tools, List<String> asked) {}
