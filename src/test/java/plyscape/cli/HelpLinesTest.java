package plyscape.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Lines of help: the library that wraps them takes any point for the end of a word. */
class HelpLinesTest {

  @ParameterizedTest
  @MethodSource("plyscape.cli.Commands#names")
  void examples_areNotBrokenAtAPoint(String command) {
    Run run = Run.of(command, "--help");
    assertEquals(0, run.code());
    assertTrue(run.out().contains("plyscape " + command), run.out());
    Matcher broken = Pattern.compile("\\w\\.\\n +[a-z0-9]").matcher(run.out());
    assertFalse(broken.find(), run.out());
  }
}
