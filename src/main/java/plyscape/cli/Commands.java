package plyscape.cli;

import java.util.Arrays;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.function.Function;
import picocli.CommandLine.Command;
import picocli.CommandLine.Help;
import plyscape.cli.job.GatherCommand;
import plyscape.cli.job.PlanCommand;
import plyscape.cli.job.PlanStages;
import plyscape.cli.job.PreviewCommand;
import plyscape.cli.recheck.ResumeCommand;
import plyscape.cli.recheck.VerifyCommand;
import plyscape.cli.shop.CalibrateCommand;
import plyscape.cli.shop.CheckCommand;
import plyscape.cli.shop.CouponCommand;
import plyscape.cli.shop.GlueupCommand;
import plyscape.cli.shop.ProbeCommand;
import plyscape.cli.shop.SuggestCommand;
import plyscape.cli.talk.Console;

/**
 * All commands. A run sets up only the one it was asked for, and help of the whole only reads names
 * and descriptions: setting up all of them would double the time that a start takes.
 */
final class Commands {

  /**
   * A command.
   *
   * @param type its class, which has picocli's annotation
   * @param make makes it
   */
  record Entry(Class<?> type, Function<Console, Callable<Integer>> make) {

    String name() {
      return type.getAnnotation(Command.class).name();
    }

    String description() {
      return String.join(" ", type.getAnnotation(Command.class).description());
    }

    boolean hidden() {
      return type.getAnnotation(Command.class).hidden();
    }
  }

  /** In the order in which help lists them. */
  private static final List<Entry> ALL =
      List.of(
          new Entry(
              PlanCommand.class,
              console -> new PlanCommand(console, new PlanStages(console::columns))),
          new Entry(
              PreviewCommand.class,
              console -> new PreviewCommand(console, new PlanStages(console::columns))),
          new Entry(GatherCommand.class, GatherCommand::new),
          new Entry(VerifyCommand.class, VerifyCommand::new),
          new Entry(ResumeCommand.class, ResumeCommand::new),
          new Entry(CheckCommand.class, CheckCommand::new),
          new Entry(CouponCommand.class, CouponCommand::new),
          new Entry(CalibrateCommand.class, CalibrateCommand::new),
          new Entry(ProbeCommand.class, ProbeCommand::new),
          new Entry(GlueupCommand.class, GlueupCommand::new),
          new Entry(SuggestCommand.class, SuggestCommand::new),
          new Entry(NewCommand.class, NewCommand::new),
          new Entry(CompletionCommand.class, CompletionCommand::new),
          new Entry(ManCommand.class, ManCommand::new));

  private Commands() {}

  /** Names of those that help lists. */
  static List<String> names() {
    return ALL.stream().filter(entry -> !entry.hidden()).map(Entry::name).toList();
  }

  /**
   * The named command; none when only options are given; all when the name is unknown, for
   * suggestions, or no argument is.
   */
  static List<Entry> needed(String... args) {
    List<String> words = Arrays.stream(args).filter(arg -> !arg.startsWith("-")).toList();
    if (words.isEmpty() && args.length > 0) {
      return List.of();
    }
    return ALL.stream()
        .filter(entry -> !words.isEmpty() && entry.name().equals(words.get(0)))
        .findFirst()
        .map(List::of)
        .orElse(ALL);
  }

  /** The list of commands in the help of the whole, as picocli would set it. */
  static String list(Help help) {
    int width = ALL.stream().mapToInt(entry -> entry.name().length()).max().orElseThrow();
    Help.TextTable table =
        Help.TextTable.forColumns(
            help.colorScheme(),
            new Help.Column(width + 4, 2, Help.Column.Overflow.TRUNCATE),
            new Help.Column(
                help.commandSpec().usageMessage().width() - width - 4,
                0,
                Help.Column.Overflow.WRAP));
    for (Entry entry : ALL) {
      if (!entry.hidden()) {
        table.addRowValues(
            help.colorScheme().commandText(entry.name()),
            help.colorScheme().text(entry.description()));
      }
    }
    return "Commands:\n" + table;
  }
}
