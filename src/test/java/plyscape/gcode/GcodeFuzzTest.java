package plyscape.gcode;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import java.util.Random;
import org.junit.jupiter.api.Test;
import plyscape.fault.InputFault;

/**
 * Whatever is fed to the parser, it gives a program of finite motions or a fault with file and
 * line.
 */
class GcodeFuzzTest {

  private static final String SEED =
      """
      %
      (head)
      G17 G21 G90 G94 G54
      G0 Z4.000
      M3 S16000
      N10 G0 X10.000 Y20.000
      G1 Z-0.500 F500
      X30.000 F1800
      G3 X25.0000 Y25.0000 I-5.0000 J0.0000
      G2 X20 Y30 R-8 Z-1
      G91 G1 X1 Y1
      G20 G1 X.1 F20
      G4 P0.5
      M5
      M30
      %
      """;

  private static final String PIECES =
      "GMXYZIJRFSPTN0123456789.-+ ()%/;#[]*\n\r\t\0eE\u00e4~!$\"'" + "G91\nG20G2X0Y0I";

  @Test
  void mutatedPrograms_neverBreakTheParser() {
    int read = 0;
    for (int seed = 1; seed <= 20_000; seed++) {
      Random random = new Random(seed);
      StringBuilder text = new StringBuilder(SEED);
      for (int k = 0; k <= random.nextInt(8); k++) {
        int at = random.nextInt(text.length());
        switch (random.nextInt(5)) {
          case 0 -> text.deleteCharAt(at);
          case 1 -> text.insert(at, PIECES.charAt(random.nextInt(PIECES.length())));
          case 2 -> text.setCharAt(at, PIECES.charAt(random.nextInt(PIECES.length())));
          case 3 ->
              text.insert(at, text.substring(at, Math.min(text.length(), at + random.nextInt(40))));
          default -> text.insert(at, "9".repeat(random.nextInt(25)));
        }
        if (text.length() == 0) {
          break;
        }
      }
      try {
        Program program =
            GcodeParser.parse("f.nc", text.toString(), GcodeParserTest.MACHINE, 240, 240, 9);
        read++;
        for (Program.Block b : program.blocks()) {
          double sum =
              b.move().x()
                  + b.move().y()
                  + b.move().depth()
                  + b.move().centreX()
                  + b.move().centreY();
          assertTrue(Double.isFinite(sum) && b.line() > 0, "seed " + seed);
        }
      } catch (InputFault e) {
        assertTrue(
            e.getMessage().startsWith("f.nc:") && e.place().line() > 0,
            "seed " + seed + ": " + e.getMessage());
      } catch (RuntimeException e) {
        fail("seed " + seed + " broke the parser with\n" + text, e);
      }
    }
    assertTrue(read > 1000, read + " were read");
  }
}
