package plyscape.fault;

import java.io.IOException;

/** Bad input or usage (exit code 2): says where, what was found and what was expected. */
public final class InputFault extends Fault {

  private final Place place;
  private final String found;
  private final String wanted;

  /**
   * Makes the message {@code place: found; wanted}.
   *
   * @param place where it stands
   * @param found what was found, a clause without a full stop
   * @param wanted what was expected or would help, a clause without a full stop; may be empty
   */
  public InputFault(Place place, String found, String wanted) {
    this(place, found, wanted, null);
  }

  /** The same, with the exception behind it. */
  public InputFault(Place place, String found, String wanted, Throwable cause) {
    super(
        (place.toString().isEmpty() ? "" : place + ": ")
            + found
            + (wanted.isEmpty() ? "" : "; " + wanted),
        cause);
    this.place = place;
    this.found = found;
    this.wanted = wanted;
  }

  /** A file that can't be opened, or whose reading was broken off. */
  public static InputFault unreadable(String file, IOException e) {
    return new InputFault(
        Place.file(file),
        "can't be read: " + IoReason.of(e),
        "name a file that exists and may be read",
        e);
  }

  /** The same fault at a place that is known better. */
  public InputFault at(Place better) {
    return new InputFault(better, found, wanted, this);
  }

  /** Where the fault stands. */
  public Place place() {
    return place;
  }
}
