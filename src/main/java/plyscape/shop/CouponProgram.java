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
import plyscape.machine.Machine;
import plyscape.machine.MotionModel;
import plyscape.machine.Move;
import plyscape.machine.Tool;
import plyscape.text.Numbers;
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
   * @param thicknessMm of the offcut
   */
  public static CouponProgram of(
      Coupon coupon,
      String title,
      double thicknessMm,
      Tool tool,
      Machine machine,
      String version,
      Warnings warnings) {
    List<ToolRun> runs =
        PathPlanner.plan(coupon.levels(), List.of(tool), machine, coupon.carved(), warnings);
    if (runs.isEmpty()) {
      throw new JobFault("\"" + tool.name() + "\" can't reach any pad", "choose a thinner tool");
    }
    List<PassText> passes = new ArrayList<>();
    List<Move> moves = new ArrayList<>();
    for (Pass pass : runs.get(0).passes()) {
      passes.add(
          new PassText(
              "pads from number "
                  + pass.plyNumber()
                  + ": to depth "
                  + Numbers.fixed(pass.depthMm(), 3),
              pass.moves()));
      moves.addAll(pass.moves());
    }
    double seconds = new MotionModel(machine).times(0, 0, -machine.safeHeightMm(), moves).totalS();
    ProgramHead header =
        new ProgramHead(
            title,
            coupon.widthMm(),
            coupon.heightMm(),
            thicknessMm,
            machine,
            tool,
            coupon.deepestMm(),
            seconds,
            version);
    String text = GcodeWriter.write(header, passes);
    Program parsed =
        GcodeParser.parse(FILE, text, machine, coupon.widthMm(), coupon.heightMm(), thicknessMm);
    return new CouponProgram(text, parsed, seconds);
  }
}
