package dev.loopgauge.setup;

import java.nio.file.Path;
import java.util.Map;
import net.harawata.appdirs.AppDirsFactory;

/**
 * Where things are kept.
 *
 * @param path the folder; it need not exist yet
 */
public record DataFolder(Path path) {
  /** The environment variable that names another folder. */
  public static final String VARIABLE = "LOOPGAUGE_DATA";

  /** The folder that the environment names, else the usual one of the operating system. */
  public static DataFolder of(Map<String, String> environment) {
    String named = environment.getOrDefault(VARIABLE, "");
    return new DataFolder(
        Path.of(
            named.isBlank()
                ? AppDirsFactory.getInstance().getUserDataDir("loopgauge", null, null)
                : named));
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
