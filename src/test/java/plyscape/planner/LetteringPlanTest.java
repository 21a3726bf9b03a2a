package plyscape.planner;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.fault.InputFault;
import plyscape.fault.Warnings;
import plyscape.job.JobReader;
import plyscape.plan.Landscape;
import plyscape.plan.PanelPlan;
import plyscape.plan.PlanOptions;
import plyscape.plan.Progress;
import plyscape.planner.cut.BiteRaster;

/** Letters in wood, from the job to the cut. */
class LetteringPlanTest {

  /**
   * Cap height less the stroke, in sixths: the alphabet's unit at 15.05 mm with a 1.5 mm cutter.
   */
  private static final double UNIT = 2.25;

  /** Half a stroke: where the first stem's middle stands. */
  private static final double HALF = 0.775;

  @TempDir Path folder;

  private static final String JOB =
      """
      layup: layup.yaml
      terrain: {file: flat.asc, crs: "EPSG:32632", plies: [pale]}
      panel: {width: 50, height: 50, border: 4}
      tools: [{name: end mill 1.5, diameter: 1.5, flute_length: 8, stepdown: 1, feed: 1000, plunge: 300}]
      """;

  private Landscape preview(String lettering, Warnings warnings) throws IOException {
    return new SmallJob(folder, SmallJob.THREE_PLIES)
        .onFlat(250)
        .preview(JOB + lettering, warnings);
  }

  /** Whether the cutter was at a point of a letter, in its units from the text's place. */
  private static boolean cutAt(BiteRaster wood, double letterX, double x, double y) {
    return wood.depthAt(8 + letterX + HALF + x * UNIT, 20 + HALF + y * UNIT) > 0.5;
  }

  @Test
  void r7_isCutUprightAndFromLeftToRight() throws IOException {
    String text = "lettering: [{text: R7, at: [8, 20], height: 15.05, ply: dark}]\n";
    PanelPlan plan =
        new SmallJob(folder, SmallJob.THREE_PLIES).onFlat(250).plan(JOB + text, new Warnings());
    assertEquals(0, plan.verification().gougedMm2());
    BiteRaster wood = SmallJob.cut(plan, new BiteRaster(50, 50));
    assertTrue(cutAt(wood, 0, 0, 3), "the R's stem is at the left");
    assertTrue(cutAt(wood, 0, 4, 4.5), "its bowl is at the upper right");
    assertTrue(!cutAt(wood, 0, 4, 2), "and nothing at the lower right but the leg");
    assertTrue(cutAt(wood, 0, 3.7, 0.5), "its leg ends at the lower right");
    double seven = 5.5 * UNIT + 1.55;
    assertTrue(cutAt(wood, seven, 1.5, 6), "the 7's bar is on top");
    assertTrue(cutAt(wood, seven, 1, 0), "its foot is at the left");
    assertTrue(!cutAt(wood, seven, 3, 0.5), "and nothing at the lower right");
  }

  @Test
  void textBeyondTheCarvedArea_isToldWithItsPlaceInTheJob() {
    InputFault fault =
        assertThrows(
            InputFault.class,
            () ->
                preview(
                    "lettering:\n  - {text: Tarn Hollow, at: [8, 20], height: 12, ply: dark}\n",
                    new Warnings()));
    assertTrue(fault.getMessage().contains("job.yaml:6:"), fault.getMessage());
    assertTrue(fault.getMessage().contains("beyond the carved area"), fault.getMessage());
  }

  @Test
  void smallText_isToldWithTheHeightThatCouldBeRead() throws IOException {
    Warnings warnings = new Warnings();
    preview("lettering: [{text: hello, at: [8, 20], height: 4, ply: dark}]\n", warnings);
    assertTrue(
        warnings.list().stream()
            .anyMatch(w -> w.code().equals("lettering-small") && w.message().contains("from ")),
        warnings.list().toString());
  }

  @Test
  void signsAndNames_areZones() throws IOException {
    Files.writeString(
        folder.resolve("places.geojson"),
        """
        {"type": "FeatureCollection",
         "crs": {"type": "name", "properties": {"name": "urn:ogc:def:crs:EPSG::32632"}},
         "features": [
          {"type": "Feature", "properties": {"name": "Ash"}, "geometry": {"type": "Point", "coordinates": [500050, 5600250]}},
          {"type": "Feature", "properties": {"name": "Oak"}, "geometry": {"type": "Point", "coordinates": [500051, 5600251]}},
          {"type": "Feature", "properties": {"name": "Far"}, "geometry": {"type": "Point", "coordinates": [600000, 5600250]}},
          {"type": "Feature", "properties": {}, "geometry": {"type": "Point", "coordinates": [500100, 5600250]}}]}
        """);
    Landscape plan =
        preview(
            """
            lettering: [{file: places.geojson, height: 9, ply: dark}]
            scale_bar: {at: [6, 5], length: 400, ply: base, height: 9}
            north: {at: [40, 8], height: 14, sink: 1}
            """,
            new Warnings());
    var zones = plan.zones();
    assertEquals(3, zones.size());
    assertTrue(zones.get(0).features() >= 1 && zones.get(0).skipped().size() >= 2);
    // 500 m of ground on 42 mm of panel.
    assertEquals(400 * 42 / 500.0, zones.get(1).area().getEnvelopeInternal().getWidth(), 1e-6);
    assertTrue(plan.tiling().exposed().get(2).getArea() > 40);
  }

  @Test
  void bundledPlaque_hasLettersPinsAndAnOutline() {
    Warnings warnings = new Warnings();
    Landscape plaque =
        Planner.plan(
                JobReader.read(
                    Path.of("samples/tarn-hollow/plaque.yaml"), java.util.List.of(), warnings),
                PlanOptions.preview(Set.of()),
                Progress.NONE,
                warnings)
            .landscape();
    assertEquals(8, plaque.zones().size());
    assertEquals(20, plaque.terrain().frame().turn().degrees());
    assertTrue(plaque.job().additions().pins() != null);
    assertTrue(plaque.job().additions().outline() != null);
  }

  @Test
  void lettersWithoutAPly_areABadJob() {
    assertThrows(
        InputFault.class,
        () -> preview("lettering: [{text: x, at: [8, 20], height: 12}]\n", new Warnings()));
  }
}
