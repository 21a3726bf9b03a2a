package plyscape.fault;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.DirectoryNotEmptyException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.util.Locale;

/**
 * Why a file couldn't be read or written, for people: several kinds have but a path for a message.
 */
public final class IoReason {

  private IoReason() {}

  /** A few words without a capital or a full stop. */
  public static String of(IOException e) {
    if (e instanceof AccessDeniedException) {
      return "permission denied";
    }
    if (e instanceof NoSuchFileException) {
      return "no such file or directory";
    }
    if (e instanceof DirectoryNotEmptyException) {
      return "something was put there meanwhile";
    }
    if (e instanceof NotDirectoryException) {
      return "\"" + e.getMessage() + "\" isn't a directory";
    }
    if (e instanceof FileSystemException named && named.getReason() != null) {
      return named.getReason().toLowerCase(Locale.ROOT);
    }
    return e.getMessage() == null ? e.getClass().getSimpleName() : e.getMessage();
  }
}
