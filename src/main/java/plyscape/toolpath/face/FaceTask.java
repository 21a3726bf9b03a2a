package plyscape.toolpath.face;

import java.util.List;
import java.util.Objects;
import plyscape.grid.Box;
import plyscape.machine.Machine;
import plyscape.machine.Tool;
import plyscape.region.FaceField;

/**
 * What is to be finished, and with what. Immutable.
 *
 * @param faces in depths of the flat plan
 * @param panel how those are cut into the panel at hand
 * @param tools all cutters, as listed
 * @param carved mm
 */
public record FaceTask(
    FaceField faces, PanelFit panel, List<Tool> tools, Machine machine, Box carved) {

  /** A face no deeper than this is left alone, and passed so far above, mm. */
  private static final double UNCUT_MM = 0.01;

  /** Copies the cutters. */
  public FaceTask {
    Objects.requireNonNull(faces);
    Objects.requireNonNull(panel);
    Objects.requireNonNull(machine);
    Objects.requireNonNull(carved);
    tools = List.copyOf(tools);
  }

  /** Depth that no cutter may go below at a place where the flat plan goes to another, mm. */
  double wantedMm(double x, double y, double flatMm) {
    return flatMm <= UNCUT_MM ? panel.belowMm(x, y, 0) - UNCUT_MM : panel.belowMm(x, y, flatMm);
  }
}
