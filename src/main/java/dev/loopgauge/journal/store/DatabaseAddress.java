package dev.loopgauge.journal.store;

import dev.loopgauge.journal.JournalException;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The address of a PostgreSQL database. It holds no user or password, since it ends up in logs, and
 * of the driver's parameters only those that say how to reach the server safely.
 *
 * @param place the address without parameters, fit to be shown
 * @param name the database's name
 * @param url all of it, for the driver
 */
public record DatabaseAddress(String place, String name, String url) {
  /** How each begins, in any case. */
  static final String START = "jdbc:postgresql:";

  private static final Pattern FORM =
      Pattern.compile(
          "(?i)(?<place>jdbc:postgresql://(?<host>[^/?#]+)/(?<name>[^/?#]+))(?:\\?(?<more>.*))?");

  /** PgJDBC, "Connecting to the Database": names are told apart by case. */
  private static final List<String> ALLOWED =
      List.of(
          "ssl",
          "sslmode",
          "sslrootcert",
          "sslcert",
          "sslkey",
          "channelBinding",
          "gssEncMode",
          "targetServerType",
          "currentSchema",
          "tcpKeepAlive");

  static DatabaseAddress of(String url) throws JournalException {
    Matcher form = FORM.matcher(url);
    boolean fits = form.matches();
    if (url.matches("(?s).*//[^/]*@.*") || (fits && form.group("host").contains("@"))) {
      throw secret();
    }
    if (!fits) {
      throw new JournalException(
          "expected an address such as jdbc:postgresql://host/database, found another form",
          "mend it; a file is named by its path alone");
    }
    if (form.group("more") != null) {
      checkParameters(form.group("more"));
    }
    return new DatabaseAddress(form.group("place"), form.group("name"), url);
  }

  private static void checkParameters(String parameters) throws JournalException {
    for (String parameter : parameters.split("&", -1)) {
      String name = decoded(parameter.replaceFirst("(?s)=.*", ""));
      if (name.matches("(?i).*(user|password|pass|pwd|token|secret).*")) {
        throw secret();
      }
      if (!ALLOWED.contains(name)) {
        throw new JournalException(
            "the journal's address has the parameter '" + shown(name) + "', which is not taken",
            "leave it out; taken are " + String.join(", ", ALLOWED));
      }
    }
  }

  private static String decoded(String name) throws JournalException {
    try {
      return URLDecoder.decode(name, StandardCharsets.UTF_8);
    } catch (IllegalArgumentException e) {
      throw new JournalException(
          "the journal's address has a parameter that can't be read",
          "leave it out; taken are " + String.join(", ", ALLOWED),
          e);
    }
  }

  private static String shown(String name) {
    return name.matches("[A-Za-z][A-Za-z0-9_.]{0,40}") ? name : "?";
  }

  private static JournalException secret() {
    return new JournalException(
        "the journal's address names a user or password, which others could read",
        "put them into PGUSER and PGPASSWORD, or into a password file named by PGPASSFILE");
  }
}
