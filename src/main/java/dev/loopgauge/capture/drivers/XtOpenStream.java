package dev.loopgauge.capture.drivers;

import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.CaptureException.Kind;
import dev.loopgauge.signal.SampleRate;
import java.util.ArrayList;
import java.util.List;
import xt.audio.XtException;
import xt.audio.XtStream;

/** A stream of XT-Audio, with the devices that it needs to stay open. */
final class XtOpenStream implements DriverStream {
  private static final long SETTLE_MS = 100;

  private final XtStream stream;
  private final StreamPlan plan;
  private final XtPair devices;
  private final SampleRate rate;
  private final int frames;
  private final List<String> names;
  private boolean started;

  XtOpenStream(XtStream stream, StreamPlan plan, XtPair devices, SampleRate rate, int frames) {
    this.stream = stream;
    this.plan = plan;
    this.devices = devices;
    this.rate = rate;
    this.frames = frames;
    this.names = plan.input().duplex() ? names() : List.of();
  }

  private List<String> names() {
    List<String> names = new ArrayList<>();
    for (int channel : plan.returns().channels()) {
      names.add(devices.input().getChannelName(false, channel));
    }
    for (int channel : plan.sends().channels()) {
      names.add(devices.output().getChannelName(true, channel));
    }
    return names;
  }

  @Override
  public SampleRate rate() {
    return rate;
  }

  @Override
  public int frames() {
    return frames;
  }

  @Override
  public void start() throws CaptureException {
    try {
      started = true;
      stream.start();
    } catch (XtException e) {
      throw XtFailure.opening(e, plan);
    }
  }

  @Override
  public void check() throws CaptureException {
    if (!stream.isRunning()) {
      throw gone(
          "The driver stopped \"%s\".",
          "Start the audio server, or plug the card in, and measure again.");
    }
    if (plan.input().duplex() && !isSame()) {
      throw gone(
          "Channels of \"%s\" went away, or its rate changed.",
          "Is the program or the card that they belong to still running?");
    }
  }

  private boolean isSame() {
    try {
      return names().equals(names)
          && devices.input().getMix().map(mix -> mix.rate == rate.hertz()).orElse(true);
    } catch (XtException e) {
      return false;
    }
  }

  private CaptureException gone(String text, String hint) {
    return new CaptureException(Kind.GONE, text.formatted(plan.input().fullName()), hint);
  }

  /** What the driver was just telling has to come to its end before its threads are taken away. */
  @Override
  public void close() {
    if (started) {
      stream.stop();
      settle();
    }
    stream.close();
    devices.close();
  }

  private static void settle() {
    try {
      Thread.sleep(SETTLE_MS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
