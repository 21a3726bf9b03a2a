package plyscape.planner;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.fault.InputFault;
import plyscape.fault.Warnings;
import plyscape.plan.Landscape;
import plyscape.report.json.PlanJson;

/** A job with a wall of half a millimetre between two ponds, from the files to the plan. */
class StandingPlanTest {

  @TempDir Path folder;

  private Landscape preview(String standing, Warnings warnings) throws IOException {
    String layup =
        """
        name: five
        glue_line: 0.04
        plies:
          - {name: high, colour: "#eeeeee", thickness: 0.9}
          - {name: second, colour: "#cc8844", thickness: 0.9, grain: 90}
          - {name: third, colour: "#336699", thickness: 0.9}
          - {name: base, colour: "#223344", thickness: 4}
        """;
    return new SmallJob(folder, layup)
        .onFlat(500)
        .with(
            "ponds.geojson",
            """
            {"type": "FeatureCollection",
             "crs": {"type": "name", "properties": {"name": "urn:ogc:def:crs:EPSG::32632"}},
             "features": [
              {"type": "Feature", "properties": {}, "geometry": {"type": "MultiPolygon", "coordinates": [
                [[[500100, 5600100], [500495, 5600100], [500495, 5600800], [500100, 5600800], [500100, 5600100]]],
                [[[500505, 5600100], [500900, 5600100], [500900, 5600800], [500505, 5600800], [500505, 5600100]]]]}}]}
            """)
        .preview(
            """
            layup: layup.yaml
            terrain: {file: flat.asc, crs: "EPSG:32632", plies: [high]}
            panel: {width: 62, height: 62, border: 6}
            zones: [{name: ponds, file: ponds.geojson, ply: third}]
            tools: [{name: end mill 2, diameter: 2}]
            """
                + standing,
            warnings);
  }

  private static boolean warned(Warnings warnings, String code) {
    return warnings.list().stream().anyMatch(w -> w.code().equals(code));
  }

  @Test
  void usually_theWallIsWarnedOfAndStandsInThePlan() throws IOException {
    Warnings warnings = new Warnings();
    Landscape plan = preview("", warnings);
    assertTrue(warned(warnings, "weak-standing"));
    var standing = PlanJson.tree(plan).get("standing");
    assertEquals(1, standing.get("weak").size());
    assertEquals(0.5, standing.get("weak").get(0).get("width_mm").asDouble(), 0.02);
    // From the uncut top face to the middle of ply 3.
    assertEquals(2.33, standing.get("weak").get(0).get("height_mm").asDouble(), 1e-9);
    assertEquals("high", standing.get("weak").get(0).get("ply").asText());
    assertEquals(0, standing.get("cured_mm2").asDouble());
  }

  @Test
  void cut_leavesNoWall() throws IOException {
    Warnings warnings = new Warnings();
    Landscape plan = preview("standing: {cure: cut}\n", warnings);
    assertEquals(0, plan.standing().weak().size());
    assertTrue(plan.standing().curedMm2() > 15);
    assertTrue(warned(warnings, "standing-cured"));
  }

  @Test
  void widen_makesItAsWideAsAsked() throws IOException {
    Warnings warnings = new Warnings();
    Landscape plan = preview("standing: {cure: widen, least_width: 1.2}\n", warnings);
    assertEquals(0, plan.standing().weak().size());
    assertEquals(0.73 * 35, plan.standing().curedMm2(), 0.7);
  }

  @Test
  void unknownCure_isToldWithThoseThatThereAre() {
    InputFault fault =
        assertThrows(InputFault.class, () -> preview("standing: {cure: glue}\n", new Warnings()));
    assertTrue(fault.getMessage().contains("tell, cut"), fault.getMessage());
  }
}
