package plyscape.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.CRC32;
import java.util.zip.Deflater;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Each limit on input refuses by name and can be moved; claims of size cost nothing. */
class LimitsTest {

  @TempDir Path folder;
  private SmallJob small;
  private Path job;

  @BeforeEach
  void makeJob() {
    small = new SmallJob(folder);
    small.write(
        "map.geojson",
        "{\"type\":\"FeatureCollection\",\"features\":["
            + "{\"type\":\"Feature\",\"properties\":{},\"geometry\":{\"type\":\"LineString\",\"coordinates\":[[9,0],[9,1],[9,2]]}},"
            + "{\"type\":\"Feature\",\"properties\":{},\"geometry\":null}]}");
    job =
        small.job(
            "job.yaml",
            "minimum_floor: 0.3\nzones: [{name: z, file: map.geojson, ply: low, width: 1}]\n");
  }

  private void refused(String limit, long value, Object... args) {
    Object[] all = java.util.Arrays.copyOf(args, args.length + 2);
    all[args.length] = "--limit";
    all[args.length + 1] = limit + "=" + value;
    Run run = Run.of(all);
    assertEquals(2, run.code(), limit + ": " + run.err());
    assertTrue(run.err().contains("--limit " + limit + "=N"), run.err());
    assertTrue(run.err().contains(" more than " + value), run.err());
  }

  @Test
  void eachLimit_namesItselfAndTheFile() {
    refused("settings-bytes", 100, "preview", job, "-q");
    refused("settings-values", 12, "preview", job, "-q");
    refused("settings-levels", 2, "preview", job, "-q");
    refused("pixels", 143, "preview", job, "-q");
    refused("features", 1, "preview", job, "-q");
    refused("points", 2, "preview", job, "-q");
    Path out = folder.resolve("out");
    assertEquals(0, Run.of("plan", job, "-o", out, "-q").code());
    refused("program-bytes", 100, "verify", out, "-q");
  }

  @Test
  void aLimitRaised_letsMoreIn() {
    Path deep = small.write("deep.yaml", "a: " + "[".repeat(60) + "]".repeat(60) + "\n");
    Run usual = Run.of("check", deep);
    assertTrue(
        usual.err().contains("deep.yaml") && usual.err().contains("more than 40 levels"),
        usual.err());
    Run raised = Run.of("check", deep, "--limit", "settings-levels=100");
    assertTrue(raised.err().contains("unknown key \"a\""), raised.err());
    Run after = Run.of("check", deep);
    assertEquals(usual.err(), after.err(), "the limit holds for its own command only");
  }

  @Test
  void anUnknownOrSenselessLimit_isUsage() {
    for (String wrong :
        new String[] {"pixel=3", "pixels", "pixels=", "pixels=-1", "pixels=99999999999999999999"}) {
      Run run = Run.of("preview", job, "--limit", wrong);
      assertEquals(2, run.code());
      assertTrue(run.err().contains("found --limit \"" + wrong + "\"; wanted"), run.err());
    }
  }

  /**
   * 144 million cells would be more than a GB: the heads alone say that the files can't hold them.
   */
  @Test
  void smallFilesThatClaimToBeHuge_areRefusedFromTheirHeads() throws IOException {
    small.write(
        "huge.asc", "ncols 12000\nnrows 12000\nxllcorner 0\nyllcorner 0\ncellsize 1\n1 2 3\n");
    Files.write(folder.resolve("huge.png"), png(12000, 12000));
    for (String name : new String[] {"huge.asc", "huge.png"}) {
      Run run = Run.of("preview", folder.resolve(name), folder.resolve("layup.yaml"));
      assertEquals(2, run.code(), run.err());
      assertTrue(run.err().contains(name) && run.err().contains("can't hold"), run.err());
    }
  }

  @Test
  void aKeyFoundWrongLate_isToldWithFileLineAndColumn() {
    Path wrong =
        small.write(
            "wrong.yaml", "layup: layup.yaml\nterrain:\n  file: terrain.asc\n  crs: EPSG:72632\n");
    Run run = Run.of("preview", wrong);
    assertEquals(2, run.code());
    assertTrue(run.err().contains("wrong.yaml:4:3: terrain.crs: unknown CRS"), run.err());
    Run option = Run.of("preview", job, "--set", "terrain.crs=EPSG:72632");
    assertTrue(option.err().contains("plyscape: --set terrain.crs: unknown CRS"), option.err());
  }

  /** A PNG of 8-bit grey (W3C PNG, 5.3 and 11.2) whose data are a few bytes. */
  private static byte[] png(int columns, int rows) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.writeBytes(new byte[] {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n'});
    chunk(out, "IHDR", ByteBuffer.allocate(13).putInt(columns).putInt(rows).put((byte) 8).array());
    Deflater deflater = new Deflater();
    deflater.setInput(new byte[100]);
    deflater.finish();
    byte[] data = new byte[100];
    chunk(out, "IDAT", java.util.Arrays.copyOf(data, deflater.deflate(data)));
    chunk(out, "IEND", new byte[0]);
    return out.toByteArray();
  }

  private static void chunk(ByteArrayOutputStream out, String type, byte[] data) {
    byte[] body =
        ByteBuffer.allocate(4 + data.length)
            .put(type.getBytes(StandardCharsets.US_ASCII))
            .put(data)
            .array();
    CRC32 sum = new CRC32();
    sum.update(body);
    out.writeBytes(ByteBuffer.allocate(4).putInt(data.length).array());
    out.writeBytes(body);
    out.writeBytes(ByteBuffer.allocate(4).putInt((int) sum.getValue()).array());
  }
}
