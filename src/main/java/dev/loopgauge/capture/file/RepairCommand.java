package dev.loopgauge.capture.file;

import java.nio.file.Path;

/** Commands that mend a recording, as hints to copy. */
final class RepairCommand {
  private RepairCommand() {}

  /** How to make a WAV file of another kind of audio. */
  static String convert(Path file) {
    return "convert it: ffmpeg -i " + quoted(file) + " -c:a pcm_s24le converted.wav";
  }

  /** How to read a file whose header tells the wrong length. */
  static String readToEnd(Path file) {
    return "sox --ignore-length " + quoted(file) + " saved.wav";
  }

  /** How to make a shorter file of a long one. */
  static String cutOut(Path file) {
    return "cut out the stretch you need: sox " + quoted(file) + " part.wav trim START SECONDS";
  }

  private static String quoted(Path file) {
    String name = file.toString();
    return name.matches("[\\w./:\\\\-]+") ? name : '"' + name + '"';
  }
}
