package plyscape.job;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Stream;

/** Every file that is read for a job, those beside its rasters and maps with them. */
public final class JobFiles {

  private JobFiles() {}

  /**
   * The files, each once.
   *
   * @throws plyscape.fault.InputFault if the folder of a raster or map can't be listed
   */
  public static Set<Path> of(Job job) {
    Set<Path> files = new LinkedHashSet<>(job.origin().settingsFiles());
    FilesBeside beside = new FilesBeside();
    for (Path ground : grounds(job)) {
      files.add(ground);
      files.addAll(beside.of(ground));
    }
    files.addAll(fonts(job.lettering()));
    files.addAll(topMaps(job.panel()));
    return files;
  }

  /** Rasters and maps, which may have others beside them. */
  private static List<Path> grounds(Job job) {
    List<Path> files = new ArrayList<>();
    files.add(job.terrain().file());
    files.addAll(job.terrain().options().more());
    GroundCover.Outline around = job.terrain().options().cover().outline();
    if (around != null) {
      files.add(around.map().file());
    }
    job.zones().forEach(zone -> files.add(zone.file()));
    job.lettering().names().forEach(names -> files.add(names.map().file()));
    OutlineSpec outline = job.additions().outline();
    if (outline != null && outline.shape().map() != null) {
      files.add(outline.shape().map().file());
    }
    return files;
  }

  private static List<Path> fonts(LetteringSpec lettering) {
    List<LetterStyle> styles = new ArrayList<>();
    lettering.texts().forEach(text -> styles.add(text.style()));
    lettering.names().forEach(names -> styles.add(names.style()));
    if (lettering.scaleBar() != null) {
      styles.add(lettering.scaleBar().style());
    }
    if (lettering.north() != null) {
      styles.add(lettering.north().style());
    }
    return styles.stream().map(LetterStyle::font).filter(Objects::nonNull).toList();
  }

  private static List<Path> topMaps(Job.PanelSpec panel) {
    if (panel.topMap() == null) {
      return List.of();
    }
    return Stream.iterate(1, row -> row <= panel.rows(), row -> row + 1)
        .flatMap(
            row ->
                Stream.iterate(1, column -> column <= panel.columns(), column -> column + 1)
                    .map(column -> panel.topMap().fileOf("tile-" + column + "-" + row)))
        .toList();
  }
}
