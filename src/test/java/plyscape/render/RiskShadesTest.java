package plyscape.render;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import plyscape.layup.Boundary;
import plyscape.layup.Ply;
import plyscape.layup.PlyDepth;

class RiskShadesTest {

  @Test
  void oneStep_isShadedByTheClearanceThatIsNeeded() {
    // 1 mm thick: of the 0.5 mm that there is 0.1, 0.2 and 0.3 are needed.
    List<PlyDepth> plies = List.of(ply(1, 0.1, 0), ply(2, 0.2, 1e-9), ply(3, 0.3, 1e-7));
    RiskShades shades = RiskShades.of(plies);
    assertEquals(RiskStep.TINY.rgb(), shades.of(plies.get(2)));
    assertEquals(Colours.mix(RiskStep.TINY.rgb(), 0xffffff, 0.7), shades.of(plies.get(0)));
    assertEquals(Colours.mix(RiskStep.TINY.rgb(), 0xffffff, 0.35), shades.of(plies.get(1)));
    assertEquals("the clearance is needed: pale 20 %, dark 60 %.", shades.words().get(1));
  }

  @Test
  void severalSteps_keepTheirColours() {
    List<PlyDepth> plies = List.of(ply(1, 0.1, 0), ply(2, 0.6, 0.02));
    RiskShades shades = RiskShades.of(plies);
    assertEquals(RiskStep.TINY.rgb(), shades.of(plies.get(0)));
    assertEquals(RiskStep.MORE.rgb(), shades.of(plies.get(1)));
    assertEquals(List.of(), shades.words());
  }

  @Test
  void oneStepAllAlike_saysSo() {
    RiskShades shades = RiskShades.of(List.of(ply(1, 0.1, 0), ply(2, 0.1, 0)));
    assertEquals(RiskStep.TINY.rgb(), shades.of(ply(1, 0.1, 0)));
    assertEquals(List.of("All of it is in one step."), shades.words());
  }

  private static PlyDepth ply(int number, double needed, double risk) {
    return new PlyDepth(
        new Ply(number, "p" + number, 0, 1, 0, 0, ""),
        new Boundary(number - 1, 0, needed),
        new Boundary(number, 0, needed),
        number - 0.5,
        risk);
  }
}
