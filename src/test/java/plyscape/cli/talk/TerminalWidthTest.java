package plyscape.cli.talk;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class TerminalWidthTest {

  @Test
  void size_isReadAsSttyPrintsIt_elseEighty() {
    assertEquals(132, TerminalWidth.of("43 132\n"));
    assertEquals(80, TerminalWidth.of(""));
    assertEquals(80, TerminalWidth.of("stty: standard input: not a terminal"));
    assertEquals(80, TerminalWidth.of("0 0"));
    assertEquals(80, TerminalWidth.of("24 99999999999"));
  }
}
