package plyscape.files;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import plyscape.fault.InputFault;
import plyscape.fault.IoReason;
import plyscape.fault.Place;
import plyscape.text.NearestName;

/** An input file read whole, or an {@link InputFault} that names it and says what would help. */
public final class InputFile {

  /** Names looked at in a folder for a near one; more isn't worth the time. */
  private static final int LOOKED_AT = 2000;

  private InputFile() {}

  /**
   * A file's bytes.
   *
   * @param most bytes that are taken; more are refused
   * @param wanted what the file should be, for the messages, such as {@code "give a YAML file"}
   * @param tooLarge what would help when it is larger
   * @throws InputFault if it isn't there, isn't a regular file, is larger or can't be read
   */
  public static byte[] bytes(Path path, long most, String wanted, String tooLarge) {
    Place place = Place.file(path.toString());
    if (Files.exists(path) && !Files.isRegularFile(path)) { // a pipe could be read for ever
      String what = Files.isDirectory(path) ? "a directory" : "not a regular file";
      throw new InputFault(place, what, wanted);
    }
    try (InputStream in = Files.newInputStream(path)) {
      byte[] bytes = in.readNBytes((int) Math.min(Integer.MAX_VALUE - 8, most + 1));
      if (bytes.length > most) {
        throw new InputFault(place, "more than " + most + " bytes", tooLarge);
      }
      return bytes;
    } catch (NoSuchFileException e) {
      throw missing(path, place, e);
    } catch (IOException e) {
      throw new InputFault(
          place, "can't be read: " + IoReason.of(e), "check the file and its rights", e);
    }
  }

  /**
   * A text in UTF-8.
   *
   * @throws InputFault as {@link #bytes}, or if it isn't UTF-8
   */
  public static String text(Path path, long most, String wanted, String tooLarge) {
    byte[] bytes = bytes(path, most, wanted, tooLarge);
    try {
      return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
    } catch (CharacterCodingException e) {
      throw new InputFault(
          Place.file(path.toString()), "the text isn't UTF-8", "save it as UTF-8", e);
    }
  }

  /** The fault for a file that isn't there, with the nearest name in its folder. */
  public static InputFault missing(Path path, Place place, Throwable cause) {
    Path folder = path.toAbsolutePath().getParent();
    String wanted = path.getFileName() == null ? "" : path.getFileName().toString();
    // Without a line it was given to the command itself.
    String from = place.line() > 0 ? "the file that names them" : "where the command is given";
    String help = "check the name; relative paths count from " + from;
    String halves = folder == null ? "" : BrokenSwap.halves(folder, wanted);
    if (!halves.isEmpty()) {
      help = halves;
    } else if (folder != null && !Files.isDirectory(folder)) {
      help = "its folder isn't there either";
    } else if (folder != null) {
      help =
          NearestName.of(wanted, names(folder))
              .map(near -> "did you mean \"" + near + "\"?")
              .orElse(help);
    }
    return new InputFault(place, "no file \"" + path + "\"", help, cause);
  }

  private static List<String> names(Path folder) {
    try (Stream<Path> files = Files.list(folder)) {
      return files.limit(LOOKED_AT).map(file -> file.getFileName().toString()).sorted().toList();
    } catch (IOException e) {
      return List.of();
    }
  }
}
