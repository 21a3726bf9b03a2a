package plyscape.cli.process;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;
import plyscape.cli.Main;
import plyscape.cli.RootCommand;
import plyscape.cli.Run;
import plyscape.cli.talk.Console;
import plyscape.fault.InputFault;
import plyscape.fault.JobFault;
import plyscape.fault.Place;
import plyscape.fault.VerifyFault;

/** Exit codes: src/contract.md, section 6. */
class ExitCodesTest {

  @Test
  void eachKindOfOutcome_hasItsCode() {
    assertEquals(2, ExitCodes.of(new InputFault(Place.file("x"), "a", "b")));
    assertEquals(1, ExitCodes.of(new JobFault("a", "b")));
    assertEquals(3, ExitCodes.of(new VerifyFault("a", "b")));
    assertEquals(2, ExitCodes.of(new ParameterException(new CommandLine(new RootCommand()), "a")));
    assertEquals(1, ExitCodes.of(new OutOfMemoryError()));
    assertEquals(70, ExitCodes.of(new IllegalStateException("x")));
    assertEquals(70, ExitCodes.of(new StackOverflowError()));
  }

  @Test
  void ourOwnFault_saysSoAndAsksForAReport() {
    String message = ExitCodes.message(new IllegalStateException("odd"));
    assertTrue(
        message.startsWith("this is a fault of plyscape, not yours. Please report it"), message);
    assertTrue(message.contains("java.lang.IllegalStateException: odd"), message);
  }

  /** Errors pass by picocli, and Java itself would end with 1. */
  @Test
  void errorsOfTheJvm_areOurFaultToo() {
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    PrintStream broken =
        new PrintStream(new ByteArrayOutputStream()) {
          @Override
          public void print(String text) {
            throw new LinkageError("odd");
          }
        };
    Console console = new Console(broken, new PrintStream(err, true), false, false, false);
    assertEquals(70, Main.run(console, "completion"));
    assertTrue(err.toString().contains("this is a fault of plyscape"), err.toString());
  }

  @Test
  void usageFaults_goToStderrWithTheNearestNames() {
    Run typo = Run.of("chek", "layup.yaml");
    assertEquals(2, typo.code());
    assertEquals("", typo.out());
    assertTrue(typo.err().contains("chek") && typo.err().contains("check"), typo.err());
    Run option = Run.of("check", "--jsno", "layup.yaml");
    assertEquals(2, option.code());
    assertTrue(option.err().contains("--json"), option.err());
    Run none = Run.of();
    assertEquals(2, none.code());
    assertTrue(none.err().contains("no command"), none.err());
    Run missing = Run.of("check");
    assertEquals(2, missing.code());
    assertTrue(missing.err().contains("LAYUP.yaml"), missing.err());
  }

  @Test
  void helpAndVersion_areResults() {
    Run help = Run.of("--help");
    assertEquals(0, help.code());
    assertTrue(help.out().contains("Exit codes:"), help.out());
    assertEquals("", help.err());
    Run version = Run.of("--version");
    assertEquals(0, version.code());
    assertTrue(
        version
            .out()
            .matches(
                "plyscape \\d+\\.\\d+\\.\\d+ \\(commit (unknown|[0-9a-f]{10,}(-dirty)?)\\), Java"
                    + " \\d.*\n"),
        version.out());
    assertEquals(0, Run.of("check", "--help").code());
  }
}
