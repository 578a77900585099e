package dev.loopgauge.capture.jack;

import com.sun.jna.Function;
import com.sun.jna.Platform;
import dev.loopgauge.capture.CaptureException;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.jaudiolibs.jnajack.Jack;
import org.jaudiolibs.jnajack.JackClient;
import org.jaudiolibs.jnajack.JackException;
import org.jaudiolibs.jnajack.JackOptions;
import org.jaudiolibs.jnajack.JackStatus;

/** The way to the server: loads its library, keeps it quiet, and opens clients. */
final class JackAccess {
  /** JNAJack logs each failure with a stack trace before throwing it; the exception is enough. */
  private static final Logger BINDING_LOG = Logger.getLogger("org.jaudiolibs.jnajack");

  private final Jack jack;

  private JackAccess(Jack jack) {
    this.jack = jack;
  }

  /**
   * Loads the library.
   *
   * @throws CaptureException with {@code BACKEND_UNUSABLE} when this computer has none
   */
  static JackAccess load() throws CaptureException {
    BINDING_LOG.setLevel(Level.OFF);
    try {
      Jack jack = Jack.getInstance();
      silence();
      return new JackAccess(jack);
    } catch (JackException | LinkageError e) {
      throw new CaptureException(
          CaptureException.Kind.BACKEND_UNUSABLE,
          "The JACK library is not installed on this computer.",
          "Install it (Debian and Ubuntu: sudo apt-get install jackd2), start the server, and try"
              + " again.");
    }
  }

  /**
   * Keeps the library from printing. It hands its messages to a native function that does nothing
   * with them: Java is no place for threads that the library may cancel at any time.
   */
  private static void silence() {
    String library = Platform.isWindows() && Platform.is64Bit() ? "jack64" : "jack";
    Function nothing = Function.getFunction(Platform.C_LIBRARY_NAME, "strlen");
    for (String setter : List.of("jack_set_error_function", "jack_set_info_function")) {
      Function.getFunction(library, setter).invokeVoid(new Object[] {nothing});
    }
  }

  Jack jack() {
    return jack;
  }

  /**
   * Opens a client; never starts a server.
   *
   * @throws CaptureException with {@code BACKEND_UNUSABLE} when no server runs or it refuses
   */
  JackClient open(String name) throws CaptureException {
    EnumSet<JackStatus> status = EnumSet.noneOf(JackStatus.class);
    try {
      return jack.openClient(name, EnumSet.of(JackOptions.JackNoStartServer), status);
    } catch (JackException e) {
      throw status.contains(JackStatus.JackServerFailed) ? notRunning() : refused(status);
    }
  }

  private static CaptureException notRunning() {
    String server =
        Optional.ofNullable(System.getenv("JACK_DEFAULT_SERVER"))
            .map(name -> " named '" + name + "' (JACK_DEFAULT_SERVER)")
            .orElse("");
    return new CaptureException(
        CaptureException.Kind.BACKEND_UNUSABLE,
        "No JACK server" + server + " is running.",
        "Start the audio server with the sound card, rate and block size of the show, and try"
            + " again.");
  }

  private static CaptureException refused(EnumSet<JackStatus> status) {
    return new CaptureException(
        CaptureException.Kind.BACKEND_UNUSABLE,
        "The JACK server refused a new client: " + status + ".",
        "Check that this user may use the server, or restart the server.");
  }
}
