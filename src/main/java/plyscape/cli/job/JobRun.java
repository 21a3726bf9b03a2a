package plyscape.cli.job;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import plyscape.batch.Admission;
import plyscape.batch.FinishedOutput;
import plyscape.cli.talk.WarningLines;
import plyscape.fault.Fault;
import plyscape.fault.InputFault;
import plyscape.fault.Place;
import plyscape.fault.Warnings;
import plyscape.job.Fingerprint;
import plyscape.job.Job;
import plyscape.output.OutputDirectory;
import plyscape.output.OutputKind;
import plyscape.plan.CutPlan;
import plyscape.plan.CutterAdvice;
import plyscape.plan.PanelStore;
import plyscape.plan.Plan;
import plyscape.plan.PlanOptions;
import plyscape.plan.Progress;
import plyscape.plan.TiledPlan;
import plyscape.plan.Version;
import plyscape.region.Tiling;
import plyscape.text.Durations;
import plyscape.text.Numbers;
import plyscape.text.Template;

/** One job from its settings to its output directory, and what is said about it afterwards. */
public final class JobRun {

  private final Stages stages;
  private final JobInputs.Source source;
  private final PlanOptions options;
  private final Target target;

  /**
   * Where a run's files go.
   *
   * @param directory null to write nothing
   * @param dry only list what would be written
   * @param reuse what of earlier runs is left as it is where it still holds
   */
  public record Target(Path directory, OutputKind kind, boolean force, boolean dry, Reuse reuse) {}

  /** What a run goes on from. */
  public enum Reuse {
    NOTHING,
    /** Panels that a stopped run has left. */
    PANELS,
    /** A whole output, and such panels. */
    OUTPUT
  }

  /**
   * How a run went.
   *
   * @param plan null where an earlier output still held
   * @param earlier that output, else null
   * @param files names to sizes in bytes, of what was written or would be
   */
  public record Outcome(
      Plan plan, FinishedOutput earlier, Path directory, Map<String, Long> files, boolean dry) {

    private static Outcome unchanged(FinishedOutput earlier, Path directory) {
      return new Outcome(null, earlier, directory, Map.of(), false);
    }
  }

  JobRun(Stages stages, JobInputs.Source source, PlanOptions options, Target target) {
    this.stages = stages;
    this.source = source;
    this.options = options;
    this.target = target;
  }

  /** The same, going on from nothing. */
  JobRun anew() {
    Target other =
        new Target(target.directory(), target.kind(), target.force(), target.dry(), Reuse.NOTHING);
    return new JobRun(stages, source, options, other);
  }

  String name() {
    return source.name();
  }

  /** Names of what it will do, in order. */
  List<String> stages() {
    List<String> names = new ArrayList<>(List.of("settings"));
    names.addAll(stages.names(options));
    names.addAll(target.directory() == null ? List.of() : List.of("files"));
    return names;
  }

  /** Runs it; a fault leaves nothing behind. */
  public Outcome run(Progress progress, Warnings warnings) {
    return run(progress, warnings, job -> new Admission(0).enter(0));
  }

  /**
   * The same.
   *
   * @param gate lets the job begin to plan
   */
  Outcome run(Progress progress, Warnings warnings, Function<Job, Admission.Ticket> gate) {
    try {
      progress.stage("settings");
      Job job = source.read(warnings);
      Job known = target.directory() == null || options.previewOnly() ? job : fingerprinted(job);
      Optional<FinishedOutput> earlier =
          target.reuse() == Reuse.OUTPUT
              ? FinishedOutput.of(target.directory(), known)
              : Optional.empty();
      return earlier.isPresent()
          ? Outcome.unchanged(earlier.get(), target.directory())
          : planned(known, progress, warnings, gate);
    } catch (InputFault fault) {
      throw placed(fault);
    } finally {
      progress.done();
    }
  }

  private Outcome planned(
      Job job, Progress progress, Warnings warnings, Function<Job, Admission.Ticket> gate) {
    Admission.Ticket ticket = gate.apply(job);
    try {
      if (target.directory() == null) {
        Plan plan = stages.plan(job, options, progress, warnings, PanelStore.FIGURES);
        return new Outcome(plan, null, null, Map.of(), false);
      }
      return filed(job, progress, warnings);
    } finally {
      ticket.close();
    }
  }

  private Job fingerprinted(Job job) {
    return Fingerprint.of(job, asked(), stages.moreFiles()).on(job);
  }

  private Outcome filed(Job job, Progress progress, Warnings warnings) {
    try (OutputDirectory out = open(kind(job))) {
      out.goOn(target.reuse() != Reuse.NOTHING);
      return written(job, out, progress, warnings);
    }
  }

  private Outcome written(Job job, OutputDirectory out, Progress progress, Warnings warnings) {
    try {
      Plan plan = stages.plan(job, options, progress, warnings, stages.panels(out));
      progress.stage("files");
      stages.write(plan, out);
      job.origin().fingerprint().requireUnchanged(job);
      if (!target.dry()) {
        out.publish();
      }
      return new Outcome(plan, null, target.directory(), out.written(), target.dry());
    } catch (Fault fault) {
      out.discard();
      throw fault;
    }
  }

  /** A key's value may be found wrong long after the job was read: then only the key is known. */
  private InputFault placed(InputFault fault) {
    Place place = fault.place();
    boolean keyAlone = place.file().isEmpty() && place.key().matches("[a-z_]+(\\.[a-z_]+)+");
    return keyAlone ? fault.at(source.place(place.key())) : fault;
  }

  private OutputKind kind(Job job) {
    return target.kind().is(OutputKind.PLAN) && job.panel().tiled()
        ? OutputKind.TILES
        : target.kind();
  }

  /** All that decides the output besides the job's own settings. */
  private String asked() {
    List<String> accepted = options.accepted().stream().map(Enum::name).sorted().toList();
    return String.join(
        "\n",
        Version.TEXT,
        "strict " + options.strict(),
        "accepted " + accepted,
        "cell " + options.simulationCellMm());
  }

  private OutputDirectory open(OutputKind kind) {
    return target.dry()
        ? OutputDirectory.dry(target.directory(), kind, target.force())
        : OutputDirectory.open(target.directory(), kind, target.force());
  }

  /** Lines about an outcome: warnings, times, files. */
  static List<String> summary(Outcome outcome, Warnings warnings, boolean verbose) {
    List<String> lines = new ArrayList<>(WarningLines.of(warnings.list(), verbose));
    Plan plan = outcome.plan();
    if (verbose) {
      plan.tiling().merged().forEach(merged -> lines.add(line(plan, merged)));
    }
    if (plan instanceof CutPlan cut) {
      lines.add(
          "cutting takes about " + Durations.text(cut.time().totalS()) + ", tool changes apart");
    }
    if (plan instanceof CutPlan cut) {
      CutterAdvice.of(cut).map(JobRun::advice).ifPresent(lines::add);
    }
    if (plan instanceof TiledPlan tiled) {
      long earlier = tiled.tiles().stream().filter(tile -> tile.plan().earlier()).count();
      if (earlier > 0) {
        lines.add(
            earlier
                + " of "
                + tiled.tiles().size()
                + " panels were there from a run that was stopped");
      }
    }
    if (outcome.directory() != null && !outcome.files().isEmpty()) {
      long bytes = outcome.files().values().stream().mapToLong(Long::longValue).sum();
      String verb = outcome.dry() ? "would write " : "wrote ";
      lines.add(
          verb
              + (outcome.files().size() == 1 ? "1 file, " : outcome.files().size() + " files, ")
              + size(bytes)
              + ", to "
              + outcome.directory());
      if (verbose || outcome.dry()) {
        outcome.files().forEach((name, length) -> lines.add("  " + name + "  " + size(length)));
      }
    }
    return lines;
  }

  private static String advice(CutterAdvice advice) {
    return Template.fill(
        "with a flat cutter of %s mm more cutting would take about %s, %.0f %% less with its"
            + " change (an estimate; --try-cutters plans it)",
        Numbers.trimmed(advice.estimate().tool().diameterMm(), 1),
        Durations.text(advice.estimate().totalS()),
        100 * advice.savedShare());
  }

  private static String line(Plan plan, Tiling.Merged merged) {
    return Template.fill(
        "  %s, %s: %s instead of %s, parts %d, %.2f mm2",
        merged.source(),
        merged.why(),
        plan.depths().of(merged.toPly()).ply().name(),
        plan.depths().of(merged.fromPly()).ply().name(),
        merged.count(),
        merged.areaMm2());
  }

  static String size(long bytes) {
    if (bytes < 1000) {
      return bytes + " B";
    }
    return bytes < 1_000_000
        ? Numbers.fixed(bytes / 1e3, 1) + " kB"
        : Numbers.fixed(bytes / 1e6, 1) + " MB";
  }
}
