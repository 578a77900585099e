package dev.loopgauge.report.form;

/**
 * Why a command could not do its job.
 *
 * @param command the command
 * @param outcome always {@code error}
 * @param error what went wrong
 */
public record ErrorDocument(String command, String outcome, Problem error) implements Document {
  /** The outcome of all errors. */
  public static final String OUTCOME = "error";

  /**
   * What went wrong.
   *
   * @param code a name that scripts can tell apart
   * @param text what was expected and what was found where, one line
   * @param hint what to try, one line
   */
  public record Problem(String code, String text, String hint) {}

  /** The document of an error. */
  public static ErrorDocument of(String command, String code, String text, String hint) {
    return new ErrorDocument(command, OUTCOME, new Problem(code, text, hint));
  }

  /** The same without the names of folders and servers. */
  public ErrorDocument told(Discreet discreet) {
    return of(command, error.code(), discreet.told(error.text()), discreet.told(error.hint()));
  }

  @Override
  public String text() {
    return error.text() + "\n  try  " + error.hint() + "\n";
  }
}
