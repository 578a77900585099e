package dev.loopgauge.capture.drivers;

import com.sun.jna.Native;
import com.sun.jna.Pointer;
import java.util.Arrays;
import xt.audio.Callbacks.XtOnBuffer;
import xt.audio.Callbacks.XtOnXRun;
import xt.audio.Enums.XtSample;
import xt.audio.Structs.XtBuffer;
import xt.audio.XtAudio;
import xt.audio.XtStream;

/**
 * Hands blocks between a driver and a handler, on the driver's thread, and counts the driver's
 * frames. It throws nothing into the driver. (XT-Audio's own binding allocates a few small objects
 * for each block; they die young.)
 */
final class XtBlocks implements XtOnBuffer, XtOnXRun {
  private static final int ENDED_WELL = 0;

  private final BlockHandler handler;
  private final boolean counted;
  private int[] sendPlaces;
  private int[] returnPlaces;
  private float[][] sends;
  private float[][] returns;
  private int room;
  private int sampleBytes;
  private int openedSends;
  private XtSamples samples;
  private volatile boolean ready;
  private boolean attached;
  private boolean started;
  private long due;

  /**
   * Blocks for a handler.
   *
   * @param counted whether the driver counts frames so that a jump of its count is a loss
   */
  XtBlocks(BlockHandler handler, boolean counted) {
    this.handler = handler;
    this.counted = counted;
  }

  /** Makes room, once it is known how the stream opened; to be called before it starts. */
  void prepare(ChannelChoice out, ChannelChoice in, XtSample kind, int frames) {
    sendPlaces = out.places().stream().mapToInt(Integer::intValue).toArray();
    returnPlaces = in.places().stream().mapToInt(Integer::intValue).toArray();
    openedSends = out.count();
    sends = new float[sendPlaces.length][frames];
    returns = new float[returnPlaces.length][frames];
    room = frames;
    sampleBytes = XtAudio.getSampleAttributes(kind).size;
    samples = XtSamples.of(kind, frames);
    ready = true;
  }

  @Override
  public int callback(XtStream stream, XtBuffer buffer, Object user) {
    try {
      if (!attached) {
        attached = true;
        Native.detach(false); // The thread stays with the virtual machine from block to block.
      }
      if (ready) {
        move(buffer);
      }
    } catch (Throwable e) {
      handler.failed(e);
    }
    return ENDED_WELL;
  }

  private void move(XtBuffer buffer) {
    int frames = Math.min(buffer.frames, room);
    if (frames == 0) {
      return;
    }
    handler.blockSize(buffer.frames);
    for (int i = 0; i < returns.length; i++) {
      samples.read(channel(buffer.input, returnPlaces[i]), returns[i], frames);
    }
    for (float[] send : sends) {
      Arrays.fill(send, 0);
    }
    handler.block(sends, returns, frames, missed(buffer));
    for (int i = 0; i < openedSends; i++) {
      channel(buffer.output, i).setMemory(0, (long) buffer.frames * sampleBytes, (byte) 0);
    }
    for (int i = 0; i < sends.length; i++) {
      samples.write(sends[i], channel(buffer.output, sendPlaces[i]), frames);
    }
  }

  private static Pointer channel(Pointer channels, int index) {
    return channels.getPointer((long) index * Native.POINTER_SIZE);
  }

  /** Right across the overflow of a count of 32 bits too. */
  private int missed(XtBuffer buffer) {
    if (!counted || !buffer.timeValid) {
      return 0;
    }
    int missed = started ? (int) (buffer.position - due) : 0;
    started = true;
    due = buffer.position + buffer.frames;
    return missed;
  }

  @Override
  public void callback(XtStream stream, int index, Object user) {
    handler.lost();
  }
}
