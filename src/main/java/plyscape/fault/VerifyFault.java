package plyscape.fault;

/** Verification failed (exit code 3): the G-code doesn't make the panel that the plan says. */
public final class VerifyFault extends Fault {

  /** Makes the message {@code what; help}. */
  public VerifyFault(String what, String help) {
    super(what + (help.isEmpty() ? "" : "; " + help), null);
  }
}
