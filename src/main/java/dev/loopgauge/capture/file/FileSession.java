package dev.loopgauge.capture.file;

import dev.loopgauge.capture.AudioSession;
import dev.loopgauge.capture.BlockListener;
import dev.loopgauge.capture.Capture;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.RateSource;
import dev.loopgauge.capture.SessionInfo;
import dev.loopgauge.capture.Take;
import java.util.List;

/**
 * A recording in place of a sound card: its channels are the returns, its stream starts at its
 * beginning, flows as fast as it is read, and is over at its end. Nothing can be played to it.
 */
public final class FileSession implements AudioSession {
  private static final String NAME = "file";
  private static final int BLOCK = 4_096;

  private final WavFile file;
  private final List<Integer> returns;
  private final SessionInfo info;
  private boolean closed;

  /**
   * A session on an open recording, which is closed with it.
   *
   * @param returns the channels to hear, counted from 1
   * @throws AudioFileException when there is no such channel
   */
  public FileSession(WavFile file, List<Integer> returns) throws AudioFileException {
    for (int channel : returns) {
      file.requireChannel(channel);
    }
    this.file = file;
    this.returns = List.copyOf(returns);
    this.info = new SessionInfo(NAME, NAME, NAME, file.rate(), BLOCK, true, RateSource.ANY, 0);
  }

  @Override
  public SessionInfo info() {
    return info;
  }

  @Override
  public Capture capture(Take take) throws CaptureException {
    throw new CaptureException(
        CaptureException.Kind.UNSUPPORTED_FORMAT,
        "A recording can only be read: nothing can be played to it.",
        "Use `analyze` on a recording of what was sent and what came back.");
  }

  @Override
  public void stream(BlockListener listener) throws CaptureException {
    if (closed) {
      throw new IllegalStateException("the session is closed");
    }
    float[][] block = new float[returns.size()][BLOCK];
    double[] channel = new double[BLOCK];
    boolean more = true;
    for (long frame = 0; more && frame < file.frames(); frame += BLOCK) {
      int length = (int) Math.min(BLOCK, file.frames() - frame);
      for (int ret = 0; ret < block.length; ret++) {
        read(returns.get(ret), frame, length, channel);
        narrow(channel, length, block[ret]);
      }
      more = listener.block(frame, block, length);
    }
  }

  private void read(int channelFrom1, long frame, int length, double[] target)
      throws CaptureException {
    try {
      file.copy(channelFrom1, frame, target, 0, length);
    } catch (AudioFileException e) {
      throw new CaptureException(CaptureException.Kind.GONE, e.getMessage(), e.hint());
    }
  }

  private static void narrow(double[] wide, int length, float[] target) {
    for (int i = 0; i < length; i++) {
      target[i] = (float) wide[i];
    }
  }

  @Override
  public void close() {
    closed = true;
    file.close();
  }
}
