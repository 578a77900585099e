package dev.loopgauge.report.form;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Why a command could not do its job.
 *
 * @param command the command
 * @param code what went wrong, as a name that scripts can tell apart
 * @param problem what was expected and what was found where, one line
 * @param hint what to try, one line
 */
public record ErrorDocument(String command, String code, String problem, String hint)
    implements Document {
  @Override
  public String text() {
    return problem + "\n  try  " + hint + "\n";
  }

  private Map<String, Object> error() {
    Map<String, Object> error = new LinkedHashMap<>();
    error.put("code", code);
    error.put("text", problem);
    error.put("hint", hint);
    return error;
  }

  @Override
  public Map<String, Object> json() {
    Map<String, Object> json = Document.head(command, "error");
    json.put("error", error());
    return json;
  }
}
