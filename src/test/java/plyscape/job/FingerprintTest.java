package plyscape.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import plyscape.fault.Warnings;
import plyscape.files.FileDigest;
import plyscape.job.yaml.Setting;

class FingerprintTest {

  @TempDir Path root;

  /** The value is the example "abc" of FIPS 180-2, appendix B.1. */
  @Test
  void digest_isSha256() throws IOException {
    String abc = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
    assertEquals(abc, FileDigest.ofText("abc"));
    Path file = Files.writeString(root.resolve("abc"), "abc");
    assertEquals(new FileDigest("x/abc", abc), FileDigest.of(file, "x/abc"));
  }

  @Test
  void everyFileThatIsRead_isNamedFromTheJobsFolder_withThoseBesideIt() throws IOException {
    assertEquals(
        List.of(
            "../font.ttf",
            "ground.PRJ",
            "ground.asc",
            "ground.asc.aux.xml",
            "job.yaml",
            "layup.yaml",
            "maps/river.dbf",
            "maps/river.shp",
            "maps/top-1-1.csv"),
        of(folder("a")).inputs().stream().map(FileDigest::path).toList());
  }

  @Test
  void theSameJobInAnotherFolder_hasTheSameFingerprint() throws IOException {
    assertEquals(of(folder("a")), of(folder("b")));
  }

  @Test
  void aChangedFileBeside_optionOrSetting_changesIt() throws IOException {
    Path folder = folder("a");
    Fingerprint before = of(folder);
    Path job = folder.resolve("job.yaml");
    Job wider = read(job, List.of(new Setting("panel.width", "31", "--width")));
    assertNotEquals(
        before.optionsSha256(), Fingerprint.of(wider, "0.2.0", List.of()).optionsSha256());
    assertNotEquals(
        before.optionsSha256(),
        Fingerprint.of(read(job, List.of()), "0.3.0", List.of()).optionsSha256());
    Files.writeString(folder.resolve("maps/river.dbf"), "other");
    assertNotEquals(before.inputs(), of(folder).inputs());
  }

  private static Fingerprint of(Path folder) {
    return Fingerprint.of(read(folder.resolve("job.yaml"), List.of()), "0.2.0", List.of());
  }

  private static Job read(Path job, List<Setting> settings) {
    return JobReader.read(job, settings, new Warnings());
  }

  private Path folder(String name) throws IOException {
    Path folder = Files.createDirectories(root.resolve(name));
    Files.createDirectories(folder.resolve("maps"));
    for (String file :
        List.of(
            "../font.ttf",
            "ground.asc",
            "ground.PRJ",
            "ground.asc.aux.xml",
            "ground.txt",
            "maps/river.shp",
            "maps/river.dbf",
            "maps/rivers.dbf",
            "maps/top-1-1.csv")) {
      Files.writeString(folder.resolve(file), file);
    }
    Files.writeString(
        folder.resolve("layup.yaml"),
        """
        name: small
        plies:
          - {name: high, colour: "#dddddd", thickness: 1}
          - {name: low, colour: "#448844", thickness: 3}
        """);
    Files.writeString(
        folder.resolve("job.yaml"),
        """
        layup: layup.yaml
        terrain: {file: ground.asc}
        panel: {width: 30, height: 30, border: 3, top_map: {file: maps/top-1-1.csv}}
        zones:
          - {name: river, file: maps/river.shp, ply: low}
        lettering:
          - {text: Tarn, at: [5, 5], height: 5, ply: low, font: ../font.ttf}
        """);
    return folder;
  }
}
