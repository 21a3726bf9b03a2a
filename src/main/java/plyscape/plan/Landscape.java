package plyscape.plan;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import plyscape.bands.Bands;
import plyscape.bend.PanelShape;
import plyscape.bend.PlaceJudge;
import plyscape.bend.ShownCells;
import plyscape.fault.Warning;
import plyscape.job.Job;
import plyscape.layup.Depths;
import plyscape.layup.FaceWindow;
import plyscape.layup.LeastFloor;
import plyscape.layup.PlyShown;
import plyscape.layup.Spot;
import plyscape.region.FaceField;
import plyscape.region.Tiling;
import plyscape.terrain.Terrain;
import plyscape.zones.Zone;

/**
 * Which ply shows where on a panel, and how deep it is cut there: a plan without toolpaths, as a
 * preview ends with. Immutable.
 *
 * @param job what was asked
 * @param depths every ply of the layup
 * @param maps terrain, bands and zones over the carved area
 * @param tiling regions and pockets
 * @param faces depths inside the regions when the surface is sculpted; empty when every region is
 *     one flat terrace
 * @param shape how the panel lies and its plies in it
 * @param standing wood left standing that is likely to break
 * @param warnings all until the regions stood, in the order they arose
 */
public record Landscape(
    Job job,
    Depths depths,
    MapData maps,
    Tiling tiling,
    Optional<FaceField> faces,
    PanelShape shape,
    Standing standing,
    List<Warning> warnings)
    implements Plan {

  /** Checks that nothing is missing and copies the list. */
  public Landscape {
    Objects.requireNonNull(job);
    Objects.requireNonNull(depths);
    Objects.requireNonNull(maps);
    Objects.requireNonNull(tiling);
    Objects.requireNonNull(faces);
    Objects.requireNonNull(shape);
    Objects.requireNonNull(standing);
    warnings = List.copyOf(warnings);
  }

  @Override
  public Landscape landscape() {
    return this;
  }

  /** The ground over the carved area. */
  public Terrain terrain() {
    return maps.terrain();
  }

  /** Elevations to plies. */
  public Bands bands() {
    return maps.bands();
  }

  /** Zones on the panel. */
  public List<Zone> zones() {
    return maps.zones();
  }

  /** Of the pressed panel, mm. */
  public double thicknessMm() {
    return depths.thicknessMm();
  }

  /**
   * Shallowest and deepest cut of a ply's faces, mm: both its target unless they follow the
   * terrain.
   */
  public FaceWindow cutMm(int plyNumber) {
    double target = depths.of(plyNumber).targetMm();
    return faces
        .map(field -> field.rangeMm(plyNumber))
        .orElseGet(() -> new FaceWindow(target, target));
  }

  /** Deepest cut of all, mm. */
  public double deepestCutMm() {
    return cutMm(tiling.exposed().lastKey()).lowerMm();
  }

  /** Least wood left under a cut; the place only where depths go by it. */
  public LeastFloor leastFloor() {
    if (depths.byPlace()) {
      return tiling.exposed().keySet().stream()
          .map(ply -> depths.of(ply).shown().floor())
          .min(Comparator.comparingDouble(LeastFloor::floorMm))
          .orElseThrow();
    }
    double deepest = tiling.pockets().isEmpty() ? 0 : deepestCutMm();
    return new LeastFloor(thicknessMm() - deepest, null, deepest);
  }

  /** How likely one panel shows the wrong ply on more than a hundredth of its carved area. */
  public double panelRisk() {
    return depths.panelRisk(spots().stream().map(this::asCut).toList());
  }

  /** A place with the depth that it is cut to in the panel as it lies. */
  private Spot asCut(Spot spot) {
    if (shape.flat() || Double.isNaN(spot.cutMm())) {
      return spot;
    }
    double here = shape.bend().depthMm(spot.at().xMm(), spot.at().yMm(), spot.cutMm());
    return new Spot(spot.ply(), spot.at(), here, spot.sanded());
  }

  /** The places at which the plan is judged. */
  public List<Spot> spots() {
    return new ShownCells(
            tiling.carved(),
            tiling.exposed(),
            tiling.pockets(),
            faces.orElse(null),
            job.allowance().sanding().blockMm())
        .spots();
  }

  /** The same with what holds of each ply over all places where it shows. */
  public Landscape judged() {
    return shown(PlaceJudge.of(depths, shape, spots()));
  }

  /** The same with what holds of each ply over all places where it shows. */
  public Landscape shown(Map<Integer, PlyShown> shown) {
    return new Landscape(job, depths.shown(shown), maps, tiling, faces, shape, standing, warnings);
  }

  /** The same with faces that follow the terrain. */
  public Landscape sculpted(FaceField field) {
    return new Landscape(job, depths, maps, tiling, Optional.of(field), shape, standing, warnings);
  }

  /** The same with what stands, and these warnings. */
  public Landscape standing(Standing other, List<Warning> all) {
    return new Landscape(job, depths, maps, tiling, faces, shape, other, all);
  }

  /** The same with these warnings. */
  public Landscape warned(List<Warning> all) {
    return new Landscape(job, depths, maps, tiling, faces, shape, standing, all);
  }
}
