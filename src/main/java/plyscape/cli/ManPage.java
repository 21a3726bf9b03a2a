package plyscape.cli;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import plyscape.cli.process.VersionText;

/** A command's manual page in the man macros of roff, section 1. */
final class ManPage {

  private final StringBuilder out = new StringBuilder();

  private ManPage() {}

  /** The page of a command; the program's own also lists the commands. */
  static String text(CommandSpec spec) {
    ManPage page = new ManPage();
    page.write(spec);
    return page.out.toString();
  }

  private void write(CommandSpec spec) {
    String title = spec.qualifiedName("-");
    out.append(".TH ").append(title.toUpperCase(Locale.ROOT)).append(" 1 \"\" \"plyscape ");
    out.append(VersionText.text()).append("\" \"plyscape\"\n");
    section("NAME");
    line(title + " \\- " + escape(String.join(" ", spec.usageMessage().description())));
    section("SYNOPSIS");
    synopsis(spec);
    if (!spec.positionalParameters().isEmpty()) {
      section("ARGUMENTS");
      spec.positionalParameters().forEach(this::argument);
    }
    section("OPTIONS");
    spec.options().stream().filter(option -> !option.hidden()).forEach(this::option);
    if (spec.parent() == null) {
      section("COMMANDS");
      spec.subcommands()
          .forEach(
              (name, command) ->
                  entry(
                      "\\fB" + escape("plyscape-" + name) + "\\fR(1)",
                      String.join(" ", command.getCommandSpec().usageMessage().description())));
    }
    exitStatus();
    section("ENVIRONMENT");
    entry("\\fBNO_COLOR\\fR", "If set to anything, no colour is used.");
  }

  /** As the help has it where a command has its own, else from its options and arguments. */
  private void synopsis(CommandSpec spec) {
    String name = spec.qualifiedName(" ");
    String[] own = spec.usageMessage().customSynopsis();
    for (int i = 0; i < own.length; i++) {
      out.append(i > 0 ? ".br\n" : "");
      line("\\fB" + escape(name) + "\\fR" + escape(own[i].substring(name.length())));
    }
    if (own.length > 0) {
      return;
    }
    StringBuilder words = new StringBuilder(" [\\fIOPTION\\fR]...");
    spec.options().stream()
        .filter(OptionSpec::required)
        .forEach(
            option -> words.append(" \\fB" + escape(option.names()[0]) + "\\fR " + label(option)));
    for (PositionalParamSpec argument : spec.positionalParameters()) {
      words.append(argument.required() ? " " + label(argument) : " [" + label(argument) + "]");
    }
    line("\\fB" + escape(name) + "\\fR" + words);
  }

  private static String label(ArgSpec argument) {
    return "\\fI" + escape(argument.paramLabel()) + "\\fR";
  }

  private void argument(PositionalParamSpec argument) {
    entry("\\fI" + escape(argument.paramLabel()) + "\\fR", description(argument));
  }

  private void option(OptionSpec option) {
    String value = option.arity().max() == 0 ? "" : "=\\fI" + escape(option.paramLabel()) + "\\fR";
    String names =
        Stream.of(option.names())
            .map(name -> "\\fB" + escape(name) + "\\fR")
            .collect(Collectors.joining(", "));
    entry(names + value, description(option));
  }

  private static String description(ArgSpec argument) {
    String text = String.join(" ", argument.description());
    String value = argument.defaultValueString(false);
    return text.replace("${DEFAULT-VALUE}", value == null ? "" : value);
  }

  private void exitStatus() {
    section("EXIT STATUS");
    for (List<String> code :
        List.of(
            List.of("0", "Done."),
            List.of(
                "1", "The job can't be done as asked; the message says why and what would help."),
            List.of("2", "Usage, or a bad input file."),
            List.of("3", "Verification failed."),
            List.of("70", "A fault of plyscape itself."))) {
      entry("\\fB" + code.get(0) + "\\fR", code.get(1));
    }
  }

  private void section(String name) {
    out.append(".SH ").append(name).append('\n');
  }

  private void entry(String head, String text) {
    out.append(".TP\n");
    line(head);
    line(escape(text));
  }

  private void line(String text) {
    out.append(text.startsWith(".") || text.startsWith("'") ? "\\&" : "").append(text).append('\n');
  }

  private static String escape(String text) {
    String plain = Ansi.OFF.string(text);
    return plain.replace("\\", "\\e").replace("-", "\\-").replaceAll("\\s+", " ");
  }
}
