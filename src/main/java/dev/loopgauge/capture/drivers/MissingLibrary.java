package dev.loopgauge.capture.drivers;

import dev.loopgauge.capture.CaptureException;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Tells what is missing when native code doesn't load. */
final class MissingLibrary {
  private static final Pattern LIBRARY =
      Pattern.compile("\\b((?!libxt-audio)lib[\\w+-]+\\.so[.\\d]*): ");

  private MissingLibrary() {}

  static CaptureException failure(LinkageError error) {
    Matcher missing = LIBRARY.matcher(String.valueOf(error.getMessage()));
    if (missing.find()) {
      return unusable(
          "The drivers need " + missing.group(1) + ", which doesn't load on this computer.",
          "Install libjack, libasound and libpulse (Debian and Ubuntu: sudo apt-get install"
              + " libjack-jackd2-0 libasound2 libpulse0), or choose another back end.");
    }
    if (System.getProperty("os.name").startsWith("Windows")) {
      return unusable(
          "The drivers' native library is not in this program: its terms don't allow that.",
          "Put xt.audio-2.0.jar from Maven Central beside this program's jar, and start both:"
              + " java -cp \"loopgauge.jar;xt.audio-2.0.jar\" dev.loopgauge.cli.Main");
    }
    return unusable(
        "The drivers' native library doesn't run on this computer.",
        "It is made for Linux and Windows on x86 processors; choose another back end.");
  }

  private static CaptureException unusable(String text, String hint) {
    return new CaptureException(CaptureException.Kind.BACKEND_UNUSABLE, text, hint);
  }
}
