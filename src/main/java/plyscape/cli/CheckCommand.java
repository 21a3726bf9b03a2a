package plyscape.cli;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import plyscape.job.LayupReader;
import plyscape.layup.DepthModel;
import plyscape.layup.Layup;
import plyscape.layup.PlyDepth;
import plyscape.text.Numbers;
import plyscape.text.TextTable;

/** {@code plyscape check}: where each ply of a layup lies, and whether it can be hit surely. */
@Command(
    name = "check",
    description = "The table of a layup's plies: where each lies, how deep it is cut, and whether that is sure.",
    sortOptions = false)
final class CheckCommand implements Callable<Integer> {

  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "LAYUP.yaml", description = "The layup.")
  private String layupFile;

  @Mixin private AllowanceOptions allowance;

  @Option(names = "--accept-thickness", description = "Believe a measured thickness far from the nominal one.")
  private boolean acceptThickness;

  @Option(names = "--json", description = "Print the table as JSON.")
  private boolean json;

  @Mixin private CommonOptions common;

  private final Console console;

  CheckCommand(Console console) {
    this.console = console;
  }

  @Override
  public Integer call() throws JsonProcessingException {
    Layup layup = LayupReader.read(Paths.of(spec, layupFile));
    List<PlyDepth> depths = DepthModel.depths(layup, allowance.read(spec), acceptThickness);
    console.result(json ? json(layup, depths) : table(depths));
    return ExitCodes.DONE;
  }

  private static String table(List<PlyDepth> depths) {
    TextTable table =
        new TextTable()
            .right("no.")
            .left("ply")
            .left("colour")
            .right("top mm")
            .right("bottom")
            .right("mid")
            .right("target")
            .right("needed")
            .right("available")
            .left("verdict");
    for (PlyDepth depth : depths) {
      table.row(
          Integer.toString(depth.ply().number()),
          depth.ply().name(),
          depth.ply().colour(),
          mm(depth.topMm()),
          mm(depth.bottomMm()),
          mm(depth.midMm()),
          mm(depth.targetMm()),
          mm(depth.neededMm()),
          mm(depth.availableMm()),
          depth.reliable() ? "reliable" : "too thin");
    }
    return table.text();
  }

  private static String mm(double value) {
    return Numbers.fixed(value, 3);
  }

  private static String json(Layup layup, List<PlyDepth> depths) throws JsonProcessingException {
    ObjectMapper mapper = new ObjectMapper();
    ObjectNode root = mapper.createObjectNode();
    root.put("schema", "plyscape-check-1");
    root.put("layup", layup.name());
    root.put("thickness_mm", DepthModel.thicknessMm(layup));
    ArrayNode plies = root.putArray("plies");
    for (PlyDepth depth : depths) {
      ObjectNode ply = plies.addObject();
      ply.put("number", depth.ply().number());
      ply.put("name", depth.ply().name());
      ply.put("colour", depth.ply().colour());
      ply.put("top_mm", depth.topMm());
      ply.put("bottom_mm", depth.bottomMm());
      ply.put("mid_mm", depth.midMm());
      ply.put("target_mm", depth.targetMm());
      ply.put("needed_mm", depth.neededMm());
      ply.put("available_mm", depth.availableMm());
      ply.put("reliable", depth.reliable());
      ply.put("risk", depth.risk());
    }
    return mapper.writerWithDefaultPrettyPrinter().writeValueAsString(root).replace("\r\n", "\n") + "\n";
  }
}
