package plyscape.simulate;

import plyscape.gcode.Program;
import plyscape.machine.Tool;

/** A program and the tool that runs it. */
public record Cut(Program program, Tool tool) {}
