package dev.loopgauge.job.recorded;

import dev.loopgauge.capture.file.AudioFileException;
import dev.loopgauge.capture.file.WavFile;
import dev.loopgauge.estimate.result.Finding;
import dev.loopgauge.estimate.result.FindingCode;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Samples;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Recorded channels, open for reading: what was sent and what came back. */
public final class Recordings implements AutoCloseable {
  private final RecordedChannel sent;
  private final Path returned;
  private final WavFile reference;
  private final WavFile ret;
  private final List<Integer> channels;

  /**
   * Opens both files.
   *
   * @param returned the recording of the returns
   * @param channels their channels
   * @throws AudioFileException when one of them can't be read as WAV
   * @throws UsageException when the reference is also a return
   */
  public Recordings(RecordedChannel sent, Path returned, List<Integer> channels)
      throws AudioFileException {
    this.sent = sent;
    this.returned = returned;
    this.channels = List.copyOf(channels);
    if (sent.file().equals(returned) && channels.contains(sent.number())) {
      throw new UsageException(
          "reference and return are both channel " + sent.number() + " of " + sent.file(),
          "name another --return-channel, or another file with --return");
    }
    reference = WavFile.open(sent.file());
    try {
      requireTwoChannels();
      ret = WavFile.open(returned);
    } catch (AudioFileException | RuntimeException failed) {
      reference.close();
      throw failed;
    }
  }

  private void requireTwoChannels() {
    if (reference.channels() == 1 && sent.file().equals(returned)) {
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
            + (returned + " has " + ret.rate().hertz() + " Hz");
    String hint = "record both in one go at one rate; converting one hides its clock";
    return Optional.of(new Finding(FindingCode.RATE_MISMATCH, true, text, hint));
  }

  /**
   * What was sent, read where it is asked for.
   *
   * @throws AudioFileException when the file has no such channel
   */
  Samples reference() throws AudioFileException {
    return reference.samples(sent.number());
  }

  /**
   * What came back, channel by channel, read where it is asked for.
   *
   * @throws AudioFileException when the file lacks one of the channels
   */
  List<Samples> returns() throws AudioFileException {
    List<Samples> returns = new ArrayList<>();
    for (int channel : channels) {
      returns.add(ret.samples(channel));
    }
    return returns;
  }

  /** What must be taken for granted about where they start. */
  List<String> notes() {
    return sent.file().equals(returned)
        ? List.of()
        : List.of("both recordings are taken to start at the same instant");
  }

  /** Closes both files. */
  @Override
  public void close() {
    reference.close();
    ret.close();
  }
}
