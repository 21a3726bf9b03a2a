package plyscape.job;

import java.util.List;
import java.util.Objects;
import plyscape.layup.CutAllowance;
import plyscape.layup.Layup;
import plyscape.machine.Machine;
import plyscape.machine.Tool;

/**
 * One checked job: everything the user set, with defaults filled in. Names in it resolve; numbers
 * are in range. Immutable.
 *
 * @param name what the job says it is called, else its file's name, or the terrain's when there is
 *     no job file
 * @param title what heads pages and pictures: what the job says it is called, else the layup's name
 * @param layup the layup as read
 * @param terrain which terrain and how it is taken
 * @param panel the panel's size
 * @param zones later over earlier
 * @param bench tools, machine and what cut and finish need
 * @param regions what regions have to be like
 * @param additions what is cut besides the landscape
 * @param origin the files and settings that it was read from
 */
public record Job(
    String name,
    String title,
    Layup layup,
    TerrainSpec terrain,
    PanelSpec panel,
    List<ZoneSpec> zones,
    Bench bench,
    RegionSpec regions,
    Additions additions,
    JobOrigin origin) {

  /** Copies the list and checks that nothing is missing. */
  public Job {
    Objects.requireNonNull(name);
    Objects.requireNonNull(title);
    Objects.requireNonNull(layup);
    Objects.requireNonNull(terrain);
    Objects.requireNonNull(panel);
    Objects.requireNonNull(bench);
    Objects.requireNonNull(regions);
    Objects.requireNonNull(additions);
    Objects.requireNonNull(origin);
    zones = List.copyOf(zones);
  }

  /** As listed, at least one. */
  public List<Tool> tools() {
    return bench.tools();
  }

  /** The router. */
  public Machine machine() {
    return bench.machine();
  }

  /** Clearance, sanding, top and floor. */
  public CutAllowance allowance() {
    return bench.allowance();
  }

  /** Letters and signs over all zones. */
  public LetteringSpec lettering() {
    return additions.lettering();
  }

  /** Regions smaller than this are given to a neighbour. */
  public double minimumAreaMm2() {
    return regions.minimumAreaMm2();
  }

  /** Flat terraces, or faces that follow the terrain. */
  public SurfaceSpec surface() {
    return regions.surface();
  }

  /**
   * The panel, or several equal ones that butt and carry one landscape together.
   *
   * @param widthMm X size of one panel
   * @param heightMm Y size of one panel
   * @param borderMm uncut margin on each side, at least; with several panels around the whole, none
   *     at seams
   * @param columns panels side by side in X
   * @param rows panels in Y
   * @param topMap where the heights of the top face are, or null for a flat panel
   * @param turnDegrees by which the ground is turned on the panel, counter-clockwise
   */
  public record PanelSpec(
      double widthMm,
      double heightMm,
      double borderMm,
      int columns,
      int rows,
      TopMapSpec topMap,
      double turnDegrees) {

    /** A single panel. */
    public PanelSpec(double widthMm, double heightMm, double borderMm) {
      this(widthMm, heightMm, borderMm, 1, 1, null, 0);
    }

    /** Whether it is more than one panel. */
    public boolean tiled() {
      return columns * rows > 1;
    }

    /** All panels together, as if they were one. */
    public PanelSpec whole() {
      return new PanelSpec(columns * widthMm, rows * heightMm, borderMm, 1, 1, null, turnDegrees);
    }

    /** One panel by itself. */
    public PanelSpec single() {
      return new PanelSpec(widthMm, heightMm, borderMm, 1, 1, topMap, turnDegrees);
    }
  }

  /** The same job on another machine, into another layup. */
  public Job on(Machine other, Layup pressed) {
    return new Job(
        name,
        title,
        pressed,
        terrain,
        panel,
        zones,
        new Bench(tools(), other, allowance()),
        regions,
        additions,
        origin);
  }

  /** The same job with other tools. */
  public Job with(List<Tool> others) {
    Bench other = new Bench(others, machine(), allowance());
    return new Job(name, title, layup, terrain, panel, zones, other, regions, additions, origin);
  }

  /** The same job on another panel. */
  public Job on(PanelSpec other) {
    return new Job(name, title, layup, terrain, other, zones, bench, regions, additions, origin);
  }

  /** The same job with more said after its name and title. */
  public Job called(String more) {
    return new Job(
        name + more, title + more, layup, terrain, panel, zones, bench, regions, additions, origin);
  }

  /** The same job with more known of where it comes from. */
  Job from(JobOrigin other) {
    return new Job(name, title, layup, terrain, panel, zones, bench, regions, additions, other);
  }
}
