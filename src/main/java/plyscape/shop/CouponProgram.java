package plyscape.shop;

import java.util.ArrayList;
import java.util.List;
import plyscape.fault.JobFault;
import plyscape.fault.Warnings;
import plyscape.gcode.GcodeParser;
import plyscape.gcode.GcodeWriter;
import plyscape.gcode.PassText;
import plyscape.gcode.Program;
import plyscape.gcode.ProgramHead;
import plyscape.layup.DepthModel;
import plyscape.layup.Layup;
import plyscape.machine.Machine;
import plyscape.machine.MotionModel;
import plyscape.machine.Move;
import plyscape.machine.Tool;
import plyscape.text.Template;
import plyscape.toolpath.PathPlanner;
import plyscape.toolpath.task.Pass;
import plyscape.toolpath.task.ToolRun;

/**
 * A coupon's G-code, made by the same planner and writer as a panel's, and what the parser reads
 * back out of it.
 *
 * @param text the file
 * @param parsed what is in it
 * @param timeS expected time
 */
public record CouponProgram(String text, Program parsed, double timeS) {

  /** Name of the file. */
  public static final String FILE = "coupon.nc";

  /**
   * Plans and writes the program.
   *
   * @param layup of the wood
   */
  public static CouponProgram of(
      CouponPlaces places,
      Layup layup,
      Tool tool,
      Machine machine,
      String version,
      Warnings warnings) {
    Coupon coupon = places.coupon();
    List<ToolRun> runs =
        PathPlanner.plan(coupon.levels(), List.of(tool), machine, coupon.carved(), warnings);
    if (runs.isEmpty()) {
      throw new JobFault("\"" + tool.name() + "\" can't reach any pad", "choose a thinner tool");
    }
    List<PassText> passes = passes(places, runs.get(0));
    List<Move> moves = passes.stream().flatMap(pass -> pass.moves().stream()).toList();
    double thicknessMm = DepthModel.thicknessMm(layup);
    double seconds = new MotionModel(machine).times(0, 0, -machine.safeHeightMm(), moves).totalS();
    ProgramHead header =
        new ProgramHead(
            "coupon of " + layup.name(),
            places.widthMm(),
            places.heightMm(),
            thicknessMm,
            machine,
            tool,
            coupon.deepestMm(),
            seconds,
            version,
            List.of());
    String text = GcodeWriter.write(header, passes);
    Program parsed =
        GcodeParser.parse(FILE, text, machine, places.widthMm(), places.heightMm(), thicknessMm);
    return new CouponProgram(text, parsed, seconds);
  }

  private static List<PassText> passes(CouponPlaces places, ToolRun run) {
    List<PassText> passes = new ArrayList<>();
    for (double[] shift : places.shifts()) {
      for (Pass pass : run.passes()) {
        String what =
            Template.fill("pads from number %s: to depth %.3f", pass.plyNumber(), pass.depthMm());
        passes.add(new PassText(what, CouponPlaces.shifted(pass.moves(), shift)));
      }
    }
    return passes;
  }
}
