package plyscape.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ShellFilesTest {

  @TempDir Path folder;

  @Test
  void completion_knowsEveryCommandAndItsOptions() {
    Run run = Run.of("completion");
    assertEquals(0, run.code(), run.err());
    for (String name : Commands.names()) {
      assertTrue(run.out().contains("_picocli_plyscape_" + name + "()"), name);
    }
    assertTrue(run.out().contains("--sanding-tolerance"));
  }

  @Test
  void manualPages_areWrittenForEveryCommand() throws IOException {
    Run run = Run.of("man", "-o", folder.resolve("man1"));
    assertEquals(0, run.code(), run.err());
    for (String name : Commands.names()) {
      String page = Files.readString(folder.resolve("man1/plyscape-" + name + ".1"));
      assertTrue(
          page.startsWith(".TH PLYSCAPE-" + name.toUpperCase(java.util.Locale.ROOT) + " 1 "), page);
      assertTrue(page.contains(".SH OPTIONS\n"), page);
    }
    assertTrue(
        Files.readString(folder.resolve("man1/plyscape-plan.1"))
            .contains(
                "\\fBplyscape plan\\fR JOB.yaml... \\-o DIR [OPTION]...\n.br\n\\fBplyscape plan\\fR"
                    + " TERRAIN "));
    assertTrue(
        Files.readString(folder.resolve("man1/plyscape-glueup.1"))
            .contains(
                "\\fBplyscape glueup\\fR [\\fIOPTION\\fR]... \\fB\\-\\-size\\fR"
                    + " \\fIWxH\\fR \\fILAYUP.yaml\\fR\n"));
    assertTrue(
        Files.readString(folder.resolve("man1/plyscape-man.1")).contains("[\\fICOMMAND\\fR]\n"));
    assertTrue(
        Files.readString(folder.resolve("man1/plyscape.1"))
            .contains("\\fBplyscape\\-check\\fR(1)"));
  }

  @Test
  void manualPage_ofAnUnknownCommand_isAUsageFault() {
    Run run = Run.of("man", "chck");
    assertEquals(2, run.code());
    assertTrue(run.err().contains("did you mean \"check\"?"), run.err());
  }
}
