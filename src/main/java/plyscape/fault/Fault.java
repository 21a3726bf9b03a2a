package plyscape.fault;

/**
 * Something that ends a run and reaches the user as one message. The three kinds are its
 * subclasses.
 */
public abstract sealed class Fault extends RuntimeException
    permits InputFault, JobFault, VerifyFault {

  Fault(String message, Throwable cause) {
    super(message, cause);
  }
}
