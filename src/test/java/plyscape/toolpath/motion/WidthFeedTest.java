package plyscape.toolpath.motion;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import plyscape.grid.Box;
import plyscape.machine.CuttingData;
import plyscape.machine.Form;
import plyscape.machine.Machine;
import plyscape.machine.Tool;
import plyscape.toolpath.lattice.Lattice;
import plyscape.toolpath.lattice.Stock;
import plyscape.toolpath.task.PathOptions;

/** Feeds by width and depth of cut. */
class WidthFeedTest {

  /** Two flutes at 10 000 rpm: 0.05 mm a tooth at the feed. */
  private static WidthFeed feeds(double thinFeed, double leastChip) {
    CuttingData cutting = new CuttingData(10_000, 1000, 300, 2, 0.4, thinFeed);
    Tool tool = new Tool("mill", Form.of(Tool.Shape.FLAT, 3, 12), cutting);
    Stock stock = new Stock(Lattice.over(new Box(0, 0, 10, 10), 1.5));
    return new WidthFeed(stock, tool, PathOptions.of(Machine.USUAL), leastChip);
  }

  @Test
  void slotAStepdownDeep_goesAtSlotFeed() {
    assertEquals(0.5, feeds(0, 0.02).share(3, 2), 1e-9);
    assertEquals(1, feeds(0, 0.02).share(1.2, 2), 1e-9);
  }

  @Test
  void shallowSlot_takesTheSameWoodAMinute() {
    assertEquals(0.8, feeds(0, 0.02).share(3, 1.25), 1e-9);
    assertEquals(1, feeds(0, 0.02).share(3, 0.5), 1e-9);
  }

  @Test
  void chipIsNoThinnerThanTheLeast() {
    assertEquals(0.7, feeds(0, 0.035).share(3, 2), 1e-9);
  }

  /** Published for a width of a tenth of the diameter: 1.6667 (references.md, section 5). */
  @Test
  void thinBite_goesFasterOnlyWhereTheCutterAllowsIt() {
    assertEquals(1, feeds(0, 0.02).share(0.3, 2), 1e-9);
    assertEquals(1.66, feeds(2000, 0.02).share(0.3, 2), 1e-9);
    assertEquals(1.5, feeds(1500, 0.02).share(0.3, 2), 1e-9);
    assertEquals(1.5, feeds(1500, 0.02).share(0, 2), 1e-9);
  }

  /**
   * What no plan can clear a minute faster, a width of the root of the stepover at the feed, holds
   * for thin bites too: the feed grows less than the width shrinks.
   */
  @Test
  void thinBite_clearsNoMoreThanTheBoundAllows() {
    WidthFeed feeds = feeds(9000, 0.02);
    for (double width = 0.01; width < 1.89; width += 0.01) {
      double share = feeds.share(width, 2);
      assertTrue(width * share <= Math.sqrt(0.4) * 3, "width " + width);
    }
  }
}
