package plyscape.cli.process;

import java.io.PrintWriter;
import java.io.StringWriter;
import picocli.CommandLine.ParameterException;
import plyscape.fault.Fault;
import plyscape.fault.InputFault;
import plyscape.fault.JobFault;
import plyscape.fault.VerifyFault;

/**
 * The exit codes (src/contract.md, section 6), and which outcome gets which: the one place where
 * this is decided.
 */
public final class ExitCodes {

  /** Done. */
  public static final int DONE = 0;

  /** The job can't be done as asked. */
  public static final int JOB = 1;

  /** Usage, or a bad input file. */
  static final int INPUT = 2;

  /** Verification failed. */
  static final int VERIFY = 3;

  /** A fault of the program's own: EX_SOFTWARE of BSD's sysexits.h. */
  static final int OWN = 70;

  private ExitCodes() {}

  /** The code of what ended a run. */
  public static int of(Throwable thrown) {
    if (thrown instanceof Fault fault) {
      return of(fault);
    }
    if (thrown instanceof ParameterException) {
      return INPUT;
    }
    return thrown instanceof OutOfMemoryError ? JOB : OWN;
  }

  private static int of(Fault fault) {
    if (fault instanceof InputFault) {
      return INPUT;
    }
    if (fault instanceof VerifyFault) {
      return VERIFY;
    }
    return fault instanceof JobFault ? JOB : OWN;
  }

  /** What to tell the user about it. */
  public static String message(Throwable thrown) {
    if (thrown instanceof Fault || thrown instanceof ParameterException) {
      return thrown.getMessage();
    }
    if (thrown instanceof OutOfMemoryError) {
      long megabytes = Runtime.getRuntime().maxMemory() >> 20;
      return "the job needs more than the "
          + megabytes
          + " MB of memory that it may use; crop the terrain, or allow more with"
          + " JAVA_TOOL_OPTIONS=-Xmx8g";
    }
    StringWriter trace = new StringWriter();
    thrown.printStackTrace(new PrintWriter(trace));
    return "this is a fault of plyscape, not yours. Please report it with the lines below and the"
        + " files that it was given.\n"
        + VersionText.full()
        + "\n"
        + trace.toString().replace("\r\n", "\n").stripTrailing();
  }
}
