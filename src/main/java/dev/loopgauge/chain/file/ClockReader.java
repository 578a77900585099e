package dev.loopgauge.chain.file;

import dev.loopgauge.chain.BlockSizes;
import dev.loopgauge.chain.Conditions;
import dev.loopgauge.chain.Notice;
import dev.loopgauge.signal.SampleRate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads sample rates and block sizes, and takes notice of unusual ones. */
final class ClockReader {
  static final String RATE = "sample-rate";
  static final String BLOCK_SIZE = "block-size";

  private static final Pattern KILOHERTZ =
      Pattern.compile("(\\d{1,3}(?:\\.\\d{1,3})?)\\s*(?:k|khz)?", Pattern.CASE_INSENSITIVE);

  /** Drivers count in steps of this many samples: common practice, no source. */
  private static final int USUAL_STEP = 16;

  private final List<Notice> notices = new ArrayList<>();

  /** What was noticed so far. */
  List<Notice> notices() {
    return List.copyOf(notices);
  }

  SampleRate rate(YamlValue value) throws ChainFormatException {
    String what = RATE + " in Hz";
    return new SampleRate(
        value.whole(what, SampleRate.LOWEST, SampleRate.HIGHEST, ClockReader::meantHertz));
  }

  /** What a rate in kHz, written where Hz are expected, comes to in Hz. */
  private static Optional<String> meantHertz(String text) {
    Matcher matcher = KILOHERTZ.matcher(text);
    if (!matcher.matches()) {
      return Optional.empty();
    }
    long hertz = Math.round(Double.parseDouble(matcher.group(1)) * 1000);
    return hertz >= SampleRate.LOWEST && hertz <= SampleRate.HIGHEST
        ? Optional.of(String.valueOf(hertz))
        : Optional.empty();
  }

  int blockSize(YamlValue value) throws ChainFormatException {
    int size =
        value.whole(
            BLOCK_SIZE + " in samples", 1, Conditions.LARGEST_BLOCK, text -> Optional.empty());
    if (size % USUAL_STEP != 0) {
      notices.add(
          value.notice(
              BLOCK_SIZE + " " + size + " is unusual", "did you mean " + nearest(size) + "?"));
    }
    return size;
  }

  private static int nearest(int size) {
    return BlockSizes.USUAL.stream()
        .min(Comparator.comparingInt(usual -> Math.abs(usual - size)))
        .orElseThrow();
  }
}
