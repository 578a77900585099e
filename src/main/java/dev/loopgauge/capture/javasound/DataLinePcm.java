package dev.loopgauge.capture.javasound;

import javax.sound.sampled.DataLine;
import javax.sound.sampled.SourceDataLine;
import javax.sound.sampled.TargetDataLine;

/** A line of Java Sound. */
final class DataLinePcm implements PcmLine {
  /** Moves whole frames; the one thing that differs between playing and recording. */
  private interface Transfer {
    int move(byte[] bytes, float[] samples);
  }

  private final String device;
  private final DataLine line;
  private final Transfer transfer;
  private byte[] bytes = new byte[0];

  private DataLinePcm(String device, DataLine line, Transfer transfer) {
    this.device = device;
    this.line = line;
    this.transfer = transfer;
  }

  /** Plays through an open line. */
  static DataLinePcm playing(String device, SourceDataLine line) {
    PcmConverter converter = new PcmConverter(line.getFormat());
    return new DataLinePcm(
        device,
        line,
        (bytes, samples) -> {
          converter.toBytes(samples, bytes);
          return line.write(bytes, 0, bytes.length);
        });
  }

  /** Records from an open line. */
  static DataLinePcm recording(String device, TargetDataLine line) {
    PcmConverter converter = new PcmConverter(line.getFormat());
    return new DataLinePcm(
        device,
        line,
        (bytes, samples) -> {
          int got = line.read(bytes, 0, bytes.length);
          converter.toSamples(bytes, samples);
          return got;
        });
  }

  @Override
  public String device() {
    return device;
  }

  @Override
  public int channels() {
    return line.getFormat().getChannels();
  }

  @Override
  public int bufferFrames() {
    return line.getBufferSize() / frameBytes();
  }

  @Override
  public void start() {
    line.start();
  }

  @Override
  public int ready() {
    return line.available() / frameBytes();
  }

  @Override
  public long position() {
    return line.getLongFramePosition();
  }

  @Override
  public int move(float[] interleaved) {
    int length = interleaved.length / channels() * frameBytes();
    if (bytes.length != length) {
      bytes = new byte[length];
    }
    return transfer.move(bytes, interleaved) / frameBytes();
  }

  @Override
  public boolean isOpen() {
    return line.isOpen();
  }

  @Override
  public void close() {
    line.stop();
    line.flush();
    line.close();
  }

  private int frameBytes() {
    return line.getFormat().getFrameSize();
  }
}
