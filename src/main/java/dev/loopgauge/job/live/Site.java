package dev.loopgauge.job.live;

import dev.loopgauge.job.Person;
import dev.loopgauge.setup.DataFolder;
import java.util.Map;

/**
 * Where a live job runs.
 *
 * @param audio the ways to play and record
 * @param person who runs it
 * @param environment the environment variables, which name data folder and journal
 */
public record Site(AudioSystem audio, Person person, Map<String, String> environment) {
  /** The folder of profiles and calibrations. */
  DataFolder data() {
    return DataFolder.of(environment);
  }
}
