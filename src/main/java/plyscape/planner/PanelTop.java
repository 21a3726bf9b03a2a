package plyscape.planner;

import java.util.List;
import java.util.Optional;
import plyscape.bend.PanelShape;
import plyscape.bend.TopCheck;
import plyscape.bend.TopMap;
import plyscape.bend.TopReader;
import plyscape.bend.TopReading;
import plyscape.fault.Warnings;
import plyscape.grid.Box;
import plyscape.job.Job;
import plyscape.job.TopMapSpec;
import plyscape.layup.DepthModel;
import plyscape.layup.Depths;
import plyscape.machine.Machine;
import plyscape.machine.SettingUp;
import plyscape.text.Template;

/**
 * The top face of one panel as probed, and what it changes in the panel's job: the map takes the
 * place of flatness, and safe height is over its highest place. Immutable.
 *
 * @param job of the panel, changed accordingly
 * @param map empty for a flat panel
 * @param faceMm height of a flat panel's top face in work coordinates
 */
record PanelTop(Job job, Optional<TopMap> map, double faceMm) {

  /**
   * Of a panel.
   *
   * @param job of this panel alone
   * @param tile its name, for the file of readings
   * @param acceptBend believe a bend of any size
   * @throws plyscape.fault.InputFault if the readings are bad
   */
  static PanelTop of(Job job, String tile, boolean acceptBend, Warnings warnings) {
    TopMapSpec spec = job.panel().topMap();
    double face =
        job.machine().zeroZ() == Machine.ZeroZ.TOP ? 0 : DepthModel.thicknessMm(job.layup());
    if (spec == null) {
      return new PanelTop(job, Optional.empty(), face);
    }
    String file = spec.fileOf(tile).toString();
    List<TopReading> readings =
        TopCheck.check(
            file,
            TopReader.read(spec.fileOf(tile), warnings),
            new Box(0, 0, job.panel().widthMm(), job.panel().heightMm()),
            face,
            acceptBend);
    TopMap map = TopMap.of(file, readings, spec.toleranceMm());
    SettingUp set = job.machine().settingUp();
    double rises = Math.max(0, map.highMm() - face);
    Machine machine =
        job.machine()
            .with(
                new SettingUp(
                    set.zero(),
                    set.zeroZ(),
                    set.safeHeightMm() + rises,
                    set.toolChangeS(),
                    set.spinUpS()));
    Job bent = job.on(machine, job.layup().withFlatness(map.flatnessMm()));
    return new PanelTop(bent, Optional.of(map), face);
  }

  /** Of a flat panel. */
  static PanelTop flat(Job job) {
    return new PanelTop(job, Optional.empty(), 0);
  }

  /**
   * How the panel lies.
   *
   * @param flat depths that the flat plan goes by
   * @param placed depths of this panel
   */
  PanelShape shape(Depths flat, Depths placed) {
    return PanelShape.of(map, faceMm, flat, placed);
  }

  /** Warns of what the map doesn't tell. */
  void warn(Box carved, Warnings warnings) {
    map.ifPresent(
        m -> {
          double beyond = m.shareBeyond(carved);
          if (beyond > 5e-4) {
            warnings.add(
                "top-beyond",
                Template.fill(
                    "%.1f %% of the carved area lies beyond the probed places and is taken to be as"
                        + " high as the nearest; probe its corners",
                    100 * beyond),
                m.file());
          }
          m.outlier().ifPresent(words -> warnings.add("top-outlier", words, m.file()));
          if (m.leftOutRmsMm().isEmpty()) {
            warnings.add(
                "top-sparse",
                Template.fill(
                    "%d readings: none lies among others that could test it, so that only their"
                        + " tolerance counts; probe more places",
                    m.readings().size()),
                m.file());
          }
        });
  }
}
