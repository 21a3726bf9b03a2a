package plyscape.machine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

/** Records of machine and tool hold themselves to what can be. */
class ToolTest {

  private static void refused(Executable made) {
    assertThrows(IllegalArgumentException.class, made);
  }

  @Test
  void formThatCannotBe_isRefused() {
    refused(() -> Form.of(Tool.Shape.FLAT, 0, 12));
    refused(() -> Form.of(Tool.Shape.FLAT, Double.NaN, 12));
    refused(() -> Form.of(Tool.Shape.FLAT, 3, -1));
    refused(() -> Workshop.tapered(3, 12, 3.1, 10));
    refused(() -> Workshop.tapered(3, 12, 0.5, 90));
    refused(() -> new Form(Tool.Shape.FLAT, 3, 12, 0, 0, 0, Tool.Spiral.UNSAID));
  }

  @Test
  void cuttingThatCannotBe_isRefused() {
    refused(() -> new CuttingData(16_000, 1800, 500, 2, 0));
    refused(() -> new CuttingData(16_000, 1800, 500, 2, 1.01));
    refused(() -> new CuttingData(-1, 1800, 500, 2, 0.45));
    refused(() -> new CuttingData(16_000, 1800, 500, 2, 0.45, 1799));
    refused(() -> new CuttingData(16_000, Double.POSITIVE_INFINITY, 500, 2, 0.45));
    refused(() -> new Clamping(3, -0.1, 0));
  }

  @Test
  void machineThatCannotBe_isRefused() {
    refused(() -> new Travel(300, 0, 80));
    refused(() -> new Motion(0, 300, 0.02, 0));
    refused(() -> new Motion(4000, 300, -0.02, 0));
    refused(() -> new SettingUp(Machine.Zero.CENTRE, Machine.ZeroZ.TOP, 0, 60, 5));
    refused(() -> new SettingUp(Machine.Zero.CENTRE, Machine.ZeroZ.TOP, 4, 60, -5));
    refused(() -> new CutRules(1.5, true, 5, 0, 0.02));
    refused(() -> new CutRules(0.5, true, 90, 0, 0.02));
  }

  @Test
  void whatIsOtherwise_isTheOnlyThingThatChanges() {
    Tool tool = Workshop.END_MILL_3;
    assertEquals(tool, tool.with(tool.cutting()));
    assertEquals(tool.form(), tool.with(Workshop.cutting(900, 200, 1, 0.4)).form());
    Machine router = Workshop.ROUTER;
    assertEquals(
        router, router.with(router.travel()).with(router.motion()).with(router.settingUp()));
  }

  @Test
  void slowMachine_holdsAllFeeds() {
    CuttingData fast = new CuttingData(16_000, 1800, 500, 2, 0.45, 2600);
    assertEquals(fast, fast.atMost(4000));
    assertEquals(new CuttingData(16_000, 1800, 500, 2, 0.45, 2000), fast.atMost(2000));
    assertEquals(new CuttingData(16_000, 400, 400, 2, 0.45, 400), fast.atMost(400));
  }

  @Test
  void thinFeed_isTheFeedUnlessGiven() {
    Tool tool = Workshop.END_MILL_3;
    assertEquals(1800, tool.thinFeedMmPerMin());
    assertEquals(
        2600, tool.with(new CuttingData(16_000, 1800, 500, 2, 0.45, 2600)).thinFeedMmPerMin());
  }
}
