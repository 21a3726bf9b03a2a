package plyscape.terrain;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import plyscape.fault.InputFault;
import plyscape.fault.JobFault;
import plyscape.fault.Place;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.grid.UtmZone;
import plyscape.job.TerrainOptions;
import plyscape.job.TerrainSpec;
import plyscape.terrain.crs.CrsLookup;
import plyscape.terrain.crs.GroundCrs;
import plyscape.terrain.crs.GroundScale;
import plyscape.terrain.crs.PlaneMap;
import plyscape.terrain.crs.ProjectionFile;
import plyscape.terrain.raster.Affine;
import plyscape.terrain.raster.MosaicRaster;
import plyscape.terrain.raster.Raster;
import plyscape.terrain.raster.RasterHead;
import plyscape.terrain.raster.RasterView;
import plyscape.text.Template;

/**
 * Opens the rasters of a job and lays them on a metric ground plane; what the job says of them goes
 * over what they say.
 */
final class TerrainSource {

  /**
   * A raster wider or higher than this, degrees, is first cut to the crop: one UTM zone can't hold
   * it.
   */
  private static final double WIDEST_DEGREES = 24;

  /** Shapes and sizes may be off by this share; grids of countries keep well below it. */
  private static final double MOST_SPREAD = 0.05;

  /** Map grids for surveying stay below this; a maker doesn't see it. */
  private static final double LEAST_STRETCH = 0.005;

  private TerrainSource() {}

  /** The raster or mosaic, values in metres. */
  static Raster open(TerrainSpec spec, Warnings warnings) throws IOException {
    List<Path> files = new ArrayList<>(List.of(spec.file()));
    files.addAll(spec.options().more());
    List<Raster> rasters = new ArrayList<>();
    try {
      for (Path file : files) {
        rasters.add(
            taken(
                RasterOpener.open(file, spec.options().raster(), warnings),
                spec.options(),
                file,
                warnings));
      }
      return rasters.size() == 1 ? rasters.get(0) : new MosaicRaster(rasters);
    } catch (RuntimeException e) {
      for (Raster raster : rasters) {
        raster.close();
      }
      throw e;
    }
  }

  /** The raster as the job has it read: in another unit or CRS, with other voids. */
  private static Raster taken(Raster raster, TerrainOptions options, Path file, Warnings warnings) {
    RasterView view = RasterView.of(raster);
    if (options.unit() != TerrainOptions.Unit.FROM_FILE) {
      view = view.withUnit(options.unit().metres());
    } else {
      warnOfUnit(raster, warnings);
    }
    if (options.nodata() != null) {
      view = view.without(options.nodata());
    }
    if (!options.crs().isEmpty()) {
      view = view.in(crs(raster, options, warnings));
    }
    if (options.cellM() != null && raster.head().origin() != RasterHead.Origin.POINTS) {
      if (raster.head().placed()) {
        throw new InputFault(
            new Place("", 0, 0, "terrain.cell"),
            file.getFileName() + " says itself how large its cells are",
            "leave terrain.cell out");
      }
      view =
          view.placedAt(
              Affine.northUp(0, raster.rows() * options.cellM(), options.cellM(), options.cellM()));
    }
    return view;
  }

  private static void warnOfUnit(Raster raster, Warnings warnings) {
    if (raster.metresPerValue() != 1) {
      warnings.add(
          "unit",
          "the file says that its elevations aren't in metres; they are converted by "
              + raster.metresPerValue(),
          raster.name());
    }
    if (!raster.unknownUnit().isEmpty()) {
      warnings.add(
          "unit",
          "the file gives its elevations in '"
              + raster.unknownUnit()
              + "', which isn't known; they are taken as metres (terrain.unit tells another)",
          raster.name());
    }
  }

  /** The CRS that the job names, in place of the file's. */
  private static GroundCrs crs(Raster raster, TerrainOptions options, Warnings warnings) {
    GroundCrs crs =
        CrsLookup.describe(
            ProjectionFile.shortest(options.crs()), new Place("", 0, 0, "terrain.crs"));
    if (raster.crs().kind() != GroundCrs.Kind.NONE && !raster.crs().id().equals(crs.id())) {
      warnings.add(
          "crs-overridden",
          Template.fill(
              "the file says that it is in %s; terrain.crs has it taken as %s, which moves it;"
                  + " leave terrain.crs out if the file is right",
              CrsLookup.label(raster.crs().id()), CrsLookup.label(crs.id())),
          raster.name());
    }
    return crs;
  }

  /**
   * The raster on the ground: its own plane, or the WGS 84 UTM zone of its centre when it is in
   * degrees.
   */
  static GroundRaster onGround(Raster raster, TerrainSpec spec, Warnings warnings) {
    Place place = Place.file(spec.file().toString());
    GroundCrs crs = raster.crs();
    CrsLookup.tellSphere(crs.id(), place, raster.name(), warnings);
    if (crs.kind() == GroundCrs.Kind.GEOGRAPHIC) {
      return inUtm(raster, spec, place, warnings);
    }
    if (crs.kind() == GroundCrs.Kind.NONE && !ReliefCheck.likeDegrees(raster)) {
      warnings.add(
          "no-crs",
          "the raster has no CRS; its coordinates are taken as "
              + (crs.metresPerUnit() == 1 ? "metres" : (float) crs.metresPerUnit() + " m each")
              + " (terrain.crs tells another)",
          raster.name());
    }
    GroundScale scale = scale(raster, spec);
    if (scale != null && scale.spread() > MOST_SPREAD && scale.degrees() <= WIDEST_DEGREES) {
      warnings.add(
          "reprojected",
          Template.fill(
              "in %s lengths there differ by %.0f %% with place or direction; the terrain is taken"
                  + " to its UTM zone so that it keeps its shape",
              CrsLookup.label(crs.id()), 100 * scale.spread()),
          raster.name());
      return inUtm(raster, spec, place, warnings);
    }
    if (scale != null) {
      crs = measured(crs, scale, raster, warnings);
    }
    if (raster.toGround().axisParallel()) {
      return new AlignedRaster(raster, crs);
    }
    warnings.add(
        "turned-raster", "the raster's rows run aslant; it is resampled north up", raster.name());
    return new WarpedRaster(raster, crs, PlaneMap.same(), PlaneMap.same(), place);
  }

  /** How long the raster's units are where it is carved; null when that isn't asked or known. */
  private static GroundScale scale(Raster raster, TerrainSpec spec) {
    GroundCrs crs = raster.crs();
    if (crs.kind() != GroundCrs.Kind.PROJECTED || CrsLookup.metricCode(crs.id())) {
      return null;
    }
    Affine a = raster.toGround();
    double[] x = new double[4];
    double[] y = new double[4];
    for (int i = 0; i < 4; i++) {
      x[i] = a.x(raster.columns() * (i & 1), raster.rows() * (i >> 1));
      y[i] = a.y(raster.columns() * (i & 1), raster.rows() * (i >> 1));
    }
    Arrays.sort(x);
    Arrays.sort(y);
    Box crop = GroundCrop.inRaster(spec, crs);
    Box box = crop == null ? new Box(x[0], y[0], x[3], y[3]) : crop;
    double minX = Math.max(box.minX(), x[0]);
    double minY = Math.max(box.minY(), y[0]);
    double maxX = Math.min(box.maxX(), x[3]);
    double maxY = Math.min(box.maxY(), y[3]);
    return minX < maxX && minY < maxY
        ? GroundScale.over(crs, new Box(minX, minY, maxX, maxY))
        : null;
  }

  /** The CRS with its unit as long as it is on the ground, if that isn't what it says. */
  private static GroundCrs measured(
      GroundCrs crs, GroundScale scale, Raster raster, Warnings warnings) {
    double stretch = crs.metresPerUnit() / scale.metresPerUnit();
    if (scale.spread() > MOST_SPREAD) {
      warnings.add(
          "map-distorted",
          Template.fill(
              "in %s lengths there differ by %.0f %% with place or direction; take a smaller crop"
                  + " to keep the ground's shape",
              CrsLookup.label(crs.id()), 100 * scale.spread()),
          raster.name());
    }
    if (Math.abs(stretch - 1) <= LEAST_STRETCH) {
      return crs;
    }
    warnings.add(
        "map-scale",
        String.format(
            Locale.ROOT,
            "%s stretches lengths by %.4g there: a unit of it is taken as %.6g m of ground, so that"
                + " sizes, widths and scales are true",
            CrsLookup.label(crs.id()),
            stretch,
            scale.metresPerUnit()),
        raster.name());
    return new GroundCrs(crs.id(), crs.kind(), scale.metresPerUnit());
  }

  private static GroundRaster inUtm(
      Raster raster, TerrainSpec spec, Place place, Warnings warnings) {
    String from = raster.crs().id();
    Affine a = raster.toGround();
    boolean degrees = raster.crs().kind() == GroundCrs.Kind.GEOGRAPHIC;
    double wide = Math.abs(a.xCol()) * raster.columns() + Math.abs(a.xRow()) * raster.rows();
    double high = Math.abs(a.yCol()) * raster.columns() + Math.abs(a.yRow()) * raster.rows();
    Raster source = raster;
    boolean large =
        degrees
            ? Math.max(wide, high) > WIDEST_DEGREES
            : GroundCrop.inRaster(spec, raster.crs()) != null;
    if (large && a.axisParallel()) {
      source = cutToCrop(raster, spec);
    }
    double[] middle = middleDegrees(source, place);
    double x = middle[0];
    UtmZone zone = UtmZone.at(x, middle[1]);
    PlaneMap back = CrsLookup.between(zone.code(), from, place);
    PlaneMap nearMiddle =
        (xy, count) -> {
          back.map(xy, count);
          for (int i = 0; degrees && i < 2 * count; i += 2) {
            // Rasters may count longitudes from 0 to 360, or run on over the date line.
            xy[i] -= 360 * Math.rint((xy[i] - x) / 360);
          }
        };
    warnOfShift(raster, zone, place, warnings);
    return new WarpedRaster(
        source,
        CrsLookup.describe(zone.code(), place),
        CrsLookup.between(from, zone.code(), place),
        nearMiddle,
        place);
  }

  /** Longitude and latitude of a raster's middle. */
  private static double[] middleDegrees(Raster source, Place place) {
    double[] middle = {
      source.toGround().x(source.columns() / 2.0, source.rows() / 2.0),
      source.toGround().y(source.columns() / 2.0, source.rows() / 2.0)
    };
    if (source.crs().kind() != GroundCrs.Kind.GEOGRAPHIC) {
      CrsLookup.between(source.crs().id(), CrsLookup.WGS_84, place).map(middle, 1);
    }
    if (!(Math.abs(middle[1]) <= 90) || !(Math.abs(middle[0]) <= 540)) {
      throw new InputFault(
          place,
          "its CRS is in degrees, but its middle is at "
              + (float) middle[0]
              + ", "
              + (float) middle[1],
          "set terrain.crs to the CRS that its coordinates are in");
    }
    return middle;
  }

  private static void warnOfShift(Raster raster, UtmZone zone, Place place, Warnings warnings) {
    String from = raster.crs().id();
    double errorM = CrsLookup.shiftErrorM(from, zone.code(), place);
    if (errorM > 0) {
      warnings.add(
          "crs-shift",
          Template.fill(
              "between %s and %s there is no exact way without a grid that isn't at hand: the"
                  + " ground may be off by about %.0f m as a whole against maps on another datum",
              CrsLookup.label(from), zone.code(), errorM),
          raster.name());
    }
  }

  /**
   * The part of a very large raster that the crop needs, with a margin for the bends of its edges.
   */
  private static Raster cutToCrop(Raster raster, TerrainSpec spec) {
    Box box = GroundCrop.inRaster(spec, raster.crs());
    if (box == null) {
      throw new JobFault(
          spec.file().getFileName() + " spans too many degrees for one map in metres",
          "set terrain.crop, or terrain.centre and terrain.ground_width");
    }
    Affine cells = raster.toGround().inverse();
    double u0 = Math.min(cells.x(box.minX(), box.minY()), cells.x(box.maxX(), box.maxY()));
    double u1 = Math.max(cells.x(box.minX(), box.minY()), cells.x(box.maxX(), box.maxY()));
    double v0 = Math.min(cells.y(box.minX(), box.minY()), cells.y(box.maxX(), box.maxY()));
    double v1 = Math.max(cells.y(box.minX(), box.minY()), cells.y(box.maxX(), box.maxY()));
    double margin = 4 + 0.1 * Math.max(u1 - u0, v1 - v0);
    int c0 = (int) Math.max(0, Math.floor(u0 - margin));
    int r0 = (int) Math.max(0, Math.floor(v0 - margin));
    int c1 = (int) Math.min(raster.columns(), Math.ceil(u1 + margin));
    int r1 = (int) Math.min(raster.rows(), Math.ceil(v1 + margin));
    if (c1 <= c0 || r1 <= r0) {
      throw new JobFault(
          "terrain.crop lies outside " + raster.name(), "give a crop within the terrain");
    }
    return RasterView.of(raster).part(c0, r0, c1 - c0, r1 - r0);
  }
}
