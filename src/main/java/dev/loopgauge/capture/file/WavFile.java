package dev.loopgauge.capture.file;

import dev.loopgauge.capture.FileTrouble;
import dev.loopgauge.signal.SampleRate;
import dev.loopgauge.signal.Samples;
import dev.loopgauge.signal.Signal;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;

/**
 * A WAV recording, open for reading: plain, extensible, RF64 or BW64; 1 to 64 channels of 16, 24 or
 * 32-bit whole numbers or 32 or 64-bit floating point.
 *
 * <p>Samples are read block by block where they are asked for, so that memory grows with the
 * stretch asked for and not with the file. A header that doesn't fit the file is refused when it is
 * opened; only a length that was never filled in (0xFFFFFFFF, or 0 for the data and the whole
 * file), as written to a pipe, is taken to mean the end of the file.
 */
public final class WavFile implements AutoCloseable {
  private static final int BLOCK_BYTES = 1 << 15;
  private static final long BYTES_HELD_PER_FRAME = 2 * Double.BYTES;

  private final Path file;
  private final FileChannel channel;
  private final Bytes bytes;
  private final WavHeader header;
  private final Queue<ByteBuffer> blocks = new ConcurrentLinkedQueue<>();

  private WavFile(Path file, FileChannel channel) throws IOException, AudioFileException {
    this.file = file;
    this.channel = channel;
    this.bytes = new Bytes(channel);
    this.header = HeaderReader.read(file, bytes);
  }

  /**
   * Opens a recording and reads its header.
   *
   * @throws AudioFileException when there is no such file, it can't be read, it isn't a WAV file of
   *     a kind that is read, or its header isn't true
   */
  public static WavFile open(Path file) throws AudioFileException {
    if (Files.exists(file) && !Files.isRegularFile(file)) {
      String found = Files.isDirectory(file) ? "a folder" : "something that is no file";
      throw new AudioFileException(
          file, "expected a WAV file, found " + found, "name the recording itself");
    }
    try {
      FileChannel channel = FileChannel.open(file);
      try {
        return new WavFile(file, channel);
      } catch (IOException | AudioFileException | RuntimeException failed) {
        channel.close();
        throw failed;
      }
    } catch (NoSuchFileException missing) {
      throw new AudioFileException(
          file, "there is no such file", "check the name and the folder you are in");
    } catch (IOException failed) {
      throw unreadable(file, failed);
    }
  }

  /** The sample rate. */
  public SampleRate rate() {
    return header.format().rate();
  }

  /** How many channels there are. */
  public int channels() {
    return header.format().channels();
  }

  /** How each sample lies in the file. */
  public WavEncoding encoding() {
    return header.format().encoding();
  }

  /** How many samples each channel has, at least 1. */
  public long frames() {
    return header.frames();
  }

  /**
   * All samples of one channel.
   *
   * @param channelFrom1 the channel, counted from 1
   * @throws AudioFileException as {@link #channel(int, long, int)}, and when they don't fit into
   *     memory
   */
  public Signal channel(int channelFrom1) throws AudioFileException {
    long most =
        Math.min(Integer.MAX_VALUE, Runtime.getRuntime().maxMemory() / BYTES_HELD_PER_FRAME);
    if (frames() > most) {
      throw new AudioFileException(
          file,
          "expected at most " + most + " samples a channel, as memory allows, found " + frames(),
          RepairCommand.cutOut(file));
    }
    return channel(channelFrom1, 0, (int) frames());
  }

  /**
   * A stretch of one channel.
   *
   * @param channelFrom1 the channel, counted from 1
   * @param fromFrame the first sample, counted from 0
   * @param frames how many samples
   * @throws AudioFileException when there is no such channel, when the file can't be read or became
   *     shorter, or when a sample isn't a number
   * @throws IllegalArgumentException when the stretch reaches outside the file
   */
  public Signal channel(int channelFrom1, long fromFrame, int frames) throws AudioFileException {
    requireChannel(channelFrom1);
    if (fromFrame < 0 || frames < 0 || fromFrame > frames() - frames) {
      throw new IllegalArgumentException(
          frames + " samples from " + fromFrame + " on are not all among " + frames());
    }
    double[] samples = new double[frames];
    copy(channelFrom1, fromFrame, samples, 0, frames);
    return Signal.of(rate(), samples);
  }

  /** Copies a stretch that lies within the file. */
  void copy(int channelFrom1, long fromFrame, double[] target, int at, int frames)
      throws AudioFileException {
    int frameBytes = header.format().frameBytes();
    int first = (channelFrom1 - 1) * encoding().bytes();
    int most = Math.max(1, BLOCK_BYTES / frameBytes);
    ByteBuffer free = blocks.poll();
    ByteBuffer block = free == null ? ByteBuffer.allocate(most * frameBytes) : free;
    for (int done = 0; done < frames; done += most) {
      int length = Math.min(most, frames - done);
      block.clear().limit(length * frameBytes);
      read(header.dataStart() + (fromFrame + done) * frameBytes, block);
      encoding().decode(block.array(), first, frameBytes, target, at + done, length);
    }
    blocks.add(block);
    if (encoding().floating()) {
      requireSound(channelFrom1, fromFrame, target, at, frames);
    }
  }

  private void requireSound(int channelFrom1, long fromFrame, double[] samples, int at, int frames)
      throws AudioFileException {
    for (int i = 0; i < frames; i++) {
      if (!encoding().holds(samples[at + i])) {
        throw new AudioFileException(
            file,
            "sample " + (fromFrame + i) + " of channel " + channelFrom1 + " is " + samples[at + i],
            "such a number is no sound: export or record it again");
      }
    }
  }

  /**
   * One channel to read from where and when samples are asked for, from any thread, until the file
   * is closed. Reading throws {@link UnreadableRecordingException} when the file can't be read.
   *
   * @param channelFrom1 the channel, counted from 1
   * @throws AudioFileException when there is no such channel, or it has more than {@value
   *     Integer#MAX_VALUE} samples
   */
  public Samples samples(int channelFrom1) throws AudioFileException {
    requireChannel(channelFrom1);
    if (frames() > Integer.MAX_VALUE) {
      throw new AudioFileException(
          file,
          "expected at most " + Integer.MAX_VALUE + " samples a channel, found " + frames(),
          RepairCommand.cutOut(file));
    }
    return new WavChannel(this, channelFrom1);
  }

  /** Refuses a channel that the file hasn't got. */
  void requireChannel(int channelFrom1) throws AudioFileException {
    if (channelFrom1 < 1 || channelFrom1 > channels()) {
      throw new AudioFileException(
          file,
          "expected a channel from 1 to " + channels() + ", found " + channelFrom1,
          "channels count from 1: choose one that the file has");
    }
  }

  private void read(long at, ByteBuffer block) throws AudioFileException {
    try {
      int length = block.remaining();
      bytes.read(at, block);
      if (block.hasRemaining()) {
        throw new AudioFileException(
            file,
            "expected " + length + " bytes at byte " + at + ", found " + block.position(),
            "it became shorter while it was read: wait until nothing writes it any more");
      }
    } catch (IOException failed) {
      throw unreadable(file, failed);
    }
  }

  private static AudioFileException unreadable(Path file, IOException failed) {
    return new AudioFileException(
        file,
        "it can't be read: " + FileTrouble.reason(failed),
        "check that you may read it and that its disk is still there");
  }

  /** Closes the file. Reading needs nothing more from it, so a failure to close is no failure. */
  @Override
  public void close() {
    try {
      channel.close();
    } catch (IOException harmless) {
      // Nothing was written, so nothing can be lost.
    }
  }
}
