package dev.loopgauge.capture.jack;

import com.sun.jna.Function;
import com.sun.jna.Platform;
import com.sun.jna.ptr.IntByReference;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.TimedCall;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import org.jaudiolibs.jnajack.JackStatus;
import org.jaudiolibs.jnajack.lowlevel.JackLibrary;
import org.jaudiolibs.jnajack.lowlevel.JackLibraryDirect;

/** The way to the server: loads its library, keeps it quiet, and opens clients. */
final class ServerLibrary {
  /** For calls that wait for the server: one that is stuck never answers. */
  static final TimedCall TIMED =
      new TimedCall("The audio server", 5, "Restart the audio server; it runs, but it is stuck.");

  private static final int NO_START_SERVER = 0x01;
  private static final String NAME = Platform.isWindows() && Platform.is64Bit() ? "jack64" : "jack";

  private final JackLibrary library;

  private ServerLibrary(JackLibrary library) {
    this.library = library;
  }

  /**
   * Loads the library.
   *
   * @throws CaptureException with {@code BACKEND_UNUSABLE} when this computer has none
   */
  static ServerLibrary load() throws CaptureException {
    try {
      JackLibrary library = new JackLibraryDirect();
      silence();
      return new ServerLibrary(library);
    } catch (LinkageError e) {
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
    Function nothing = Function.getFunction(Platform.C_LIBRARY_NAME, "strlen");
    for (String setter : List.of("jack_set_error_function", "jack_set_info_function")) {
      function(setter).invokeVoid(new Object[] {nothing});
    }
  }

  /** A function of the library, to be called with what its Java declaration doesn't take. */
  static Function function(String name) {
    return Function.getFunction(NAME, name);
  }

  /**
   * Opens a client; never starts a server.
   *
   * @throws CaptureException with {@code BACKEND_UNUSABLE} when no server runs or it refuses
   */
  ServerClient open(String name) throws CaptureException {
    IntByReference status = new IntByReference();
    JackLibrary._jack_client client = library.jack_client_open(name, NO_START_SERVER, status);
    if (client == null) {
      throw notOpened(status.getValue());
    }
    return new ServerClient(library, client);
  }

  private static CaptureException notOpened(int bits) {
    EnumSet<JackStatus> status = EnumSet.allOf(JackStatus.class);
    status.removeIf(flag -> (bits & flag.getIntValue()) == 0);
    return status.contains(JackStatus.JackServerFailed) ? notRunning() : refused(status);
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
