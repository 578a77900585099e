package dev.loopgauge.cli;

import dev.loopgauge.capture.file.AudioFileException;
import dev.loopgauge.capture.file.WavFile;
import dev.loopgauge.estimate.Finding;
import dev.loopgauge.estimate.FindingCode;
import dev.loopgauge.estimate.Reading;
import dev.loopgauge.signal.SampleRate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Two recorded channels, open for reading: what was sent and what came back. */
final class Recordings implements AutoCloseable {
  /**
   * The longest stretch that is read, in seconds: ample for any passage of speech or music, and
   * little enough for the memory of a small laptop.
   */
  static final int LONGEST_STRETCH = 30;

  private final RecordedChannel sent;
  private final RecordedChannel returned;
  private final WavFile reference;
  private final WavFile ret;

  /**
   * Opens both files.
   *
   * @throws AudioFileException when one of them can't be read as WAV
   * @throws UsageException when both are the same channel of the same file
   */
  Recordings(RecordedChannel sent, RecordedChannel returned) throws AudioFileException {
    this.sent = sent;
    this.returned = returned;
    if (sent.equals(returned)) {
      throw new UsageException(
          "reference and return are both channel " + sent.number() + " of " + sent.file(),
          "name another --return-channel, or another file with --return");
    }
    reference = WavFile.open(sent.file());
    try {
      requireTwoChannels();
      ret = WavFile.open(returned.file());
    } catch (AudioFileException | RuntimeException failed) {
      reference.close();
      throw failed;
    }
  }

  private void requireTwoChannels() {
    if (reference.channels() == 1 && sent.file().equals(returned.file())) {
      throw new UsageException(
          sent.file() + " has one channel, so the return can't be in it too",
          "name the recording of the return with --return");
    }
  }

  /** The rate of the reference. */
  SampleRate rate() {
    return reference.rate();
  }

  /** Says so when the rates differ: then no delay in samples means anything. */
  Optional<Finding> rateMismatch() {
    if (reference.rate().equals(ret.rate())) {
      return Optional.empty();
    }
    String text =
        "the rates differ: "
            + (sent.file() + " has " + reference.rate().hertz() + " Hz, ")
            + (returned.file() + " has " + ret.rate().hertz() + " Hz");
    String hint = "record both in one go at one rate; converting one hides its clock";
    return Optional.of(new Finding(FindingCode.RATE_MISMATCH, true, text, hint));
  }

  /**
   * Both channels, ready to be compared: all of the reference, or its loudest stretch of {@value
   * #LONGEST_STRETCH} s, and the return from the same instant on.
   *
   * @param maxDelaySeconds how much longer the return is read than the reference
   * @throws AudioFileException when a file has no such channel or can't be read
   */
  Excerpt excerpt(double maxDelaySeconds) throws AudioFileException {
    long common = Math.min(reference.frames(), ret.frames());
    int frames = (int) Math.min(common, (long) LONGEST_STRETCH * rate().hertz());
    long from = LoudestStretch.start(reference, sent.number(), common, frames);
    long tail = frames + (long) rate().samplesIn(maxDelaySeconds);
    int returnFrames = (int) Math.min(ret.frames() - from, tail);
    Reading reading =
        new Reading(
            reference.channel(sent.number(), from, frames),
            ret.channel(returned.number(), from, returnFrames));
    return new Excerpt(reading, notes(from, frames));
  }

  private List<String> notes(long from, int frames) {
    List<String> notes = new ArrayList<>();
    if (!sent.file().equals(returned.file())) {
      notes.add("both recordings are taken to start at the same instant");
    }
    if (frames < reference.frames()) {
      notes.add(
          "read from "
              + (from / rate().hertz() + " s to " + (from + frames) / rate().hertz())
              + " s, where the reference is loudest");
    }
    return notes;
  }

  /** Closes both files. */
  @Override
  public void close() {
    reference.close();
    ret.close();
  }
}
