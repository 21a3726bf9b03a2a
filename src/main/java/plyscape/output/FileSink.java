package plyscape.output;

import java.nio.charset.StandardCharsets;

/** Takes the files of an output by name. */
public interface FileSink {

  /**
   * Takes a file.
   *
   * @param name relative path with {@code /}
   */
  void write(String name, byte[] bytes);

  /** Takes a text, in UTF-8. */
  default void write(String name, String text) {
    write(name, text.getBytes(StandardCharsets.UTF_8));
  }
}
