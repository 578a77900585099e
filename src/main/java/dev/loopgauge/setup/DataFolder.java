package dev.loopgauge.setup;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * Where things are kept.
 *
 * @param path the folder; it need not exist yet
 */
public record DataFolder(Path path) {
  /** The environment variable that names another folder. */
  public static final String VARIABLE = "LOOPGAUGE_DATA";

  private static final String NAME = "loopgauge";

  /** The folder that the environment names, else the default one of the operating system. */
  public static DataFolder of(Map<String, String> environment) {
    return of(environment, System.getProperty("os.name"), Path.of(System.getProperty("user.home")));
  }

  /**
   * The folder that the environment names, else the default one of an operating system: on Linux as
   * in the XDG Base Directory Specification 0.8, which ignores a path that isn't absolute.
   *
   * @param system the operating system as Java calls it
   * @param home the user's own folder
   */
  static DataFolder of(Map<String, String> environment, String system, Path home) {
    return new DataFolder(
        value(environment, VARIABLE)
            .map(Path::of)
            .orElseGet(() -> usual(environment, system.toLowerCase(Locale.ROOT), home)));
  }

  private static Path usual(Map<String, String> environment, String system, Path home) {
    if (system.startsWith("windows")) {
      return value(environment, "LOCALAPPDATA")
          .map(Path::of)
          .orElseGet(() -> home.resolve("AppData").resolve("Local"))
          .resolve(NAME);
    }
    if (system.startsWith("mac")) {
      return home.resolve("Library").resolve("Application Support").resolve(NAME);
    }
    return value(environment, "XDG_DATA_HOME")
        .map(Path::of)
        .filter(Path::isAbsolute)
        .orElseGet(() -> home.resolve(".local").resolve("share"))
        .resolve(NAME);
  }

  private static Optional<String> value(Map<String, String> environment, String variable) {
    return Optional.ofNullable(environment.get(variable)).filter(text -> !text.isBlank());
  }

  /** The profiles kept here. */
  public ProfileStore profiles() {
    return new ProfileStore(path.resolve("profiles"));
  }

  /** The calibrations kept here. */
  public CalibrationStore calibrations() {
    return new CalibrationStore(path.resolve("calibrations"));
  }
}
