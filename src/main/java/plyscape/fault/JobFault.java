package plyscape.fault;

/** The job can't be done as asked (exit code 1): says why and what would help. */
public final class JobFault extends Fault {

  /** Makes the message {@code why; help}. */
  public JobFault(String why, String help) {
    super(why + (help.isEmpty() ? "" : "; " + help), null);
  }
}
