package dev.loopgauge.capture.drivers;

import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.capture.CaptureException.Kind;
import dev.loopgauge.signal.SampleRate;
import java.util.List;
import java.util.Optional;
import xt.audio.Enums.XtSample;
import xt.audio.Enums.XtServiceCaps;
import xt.audio.Structs.XtAggregateDeviceParams;
import xt.audio.Structs.XtAggregateStreamParams;
import xt.audio.Structs.XtBufferSize;
import xt.audio.Structs.XtChannels;
import xt.audio.Structs.XtDeviceStreamParams;
import xt.audio.Structs.XtFormat;
import xt.audio.Structs.XtMix;
import xt.audio.Structs.XtStreamParams;
import xt.audio.XtDevice;
import xt.audio.XtService;
import xt.audio.XtStream;

/** Opens a plan: one device in one callback, or two devices of a driver joined. */
final class XtOpening {
  private static final SampleRate USUAL = new SampleRate(48_000);

  /** What two devices get that state no buffer of their own. (Common practice, no source.) */
  private static final int USUAL_BUFFER = 1_024;

  private static final double MS = 1_000;

  private final XtService service;
  private final StreamPlan plan;
  private final XtBlocks blocks;
  private final XtPair devices;
  private final XtDevice input;
  private final XtDevice output;
  private final boolean masked;

  private XtOpening(XtService service, StreamPlan plan, XtBlocks blocks, XtPair devices) {
    this.service = service;
    this.plan = plan;
    this.blocks = blocks;
    this.devices = devices;
    this.input = devices.input();
    this.output = devices.output();
    this.masked = service.getCapabilities().contains(XtServiceCaps.CHANNEL_MASK);
  }

  static XtOpenStream open(XtService service, StreamPlan plan, BlockHandler handler)
      throws CaptureException {
    boolean one = plan.isOneDevice();
    if (!one && !service.getCapabilities().contains(XtServiceCaps.AGGREGATION)) {
      throw new CaptureException(
          Kind.UNSUPPORTED_FORMAT,
          "\"%s\" and \"%s\" can't run together: %s joins no devices."
              .formatted(plan.output().fullName(), plan.input().fullName(), plan.input().driver()),
          "Name one device for both --output and --input.");
    }
    XtDevice input = service.openDevice(plan.returns().id());
    XtPair devices = new XtPair(input, input);
    try {
      if (!one) {
        devices = new XtPair(input, service.openDevice(plan.sends().id()));
      }
      XtBlocks blocks = new XtBlocks(handler, plan.isSampleLocked());
      return new XtOpening(service, plan, blocks, devices).opened();
    } catch (CaptureException | RuntimeException | Error e) {
      devices.close();
      throw e;
    }
  }

  /** A format that all devices of the plan support, and the channels in it. */
  private record Agreed(XtMix mix, ChannelChoice out, ChannelChoice in) {}

  private XtOpenStream opened() throws CaptureException {
    Agreed agreed = agreed();
    double ms = bufferMs(agreed);
    XtStreamParams params = new XtStreamParams(false, blocks, blocks, null);
    XtStream stream =
        plan.isOneDevice()
            ? input.openStream(new XtDeviceStreamParams(params, oneFormat(agreed), ms), null)
            : service.aggregateStream(joined(agreed, params, ms), null);
    try {
      int frames = stream.getFrames();
      checkBuffer(frames);
      blocks.prepare(agreed.out(), agreed.in(), agreed.mix().sample, frames);
      return new XtOpenStream(stream, plan, devices, new SampleRate(agreed.mix().rate), frames);
    } catch (CaptureException | RuntimeException | Error e) {
      stream.close();
      throw e;
    }
  }

  private void checkBuffer(int frames) throws CaptureException {
    if (plan.isSampleLocked() && plan.bufferSamples() != 0 && plan.bufferSamples() != frames) {
      throw new CaptureException(
          Kind.UNSUPPORTED_FORMAT,
          "\"%s\" runs at a buffer of %d samples, not %d."
              .formatted(plan.input().fullName(), frames, plan.bufferSamples()),
          "Leave the buffer out, or set it in the driver's own program.");
    }
  }

  private Agreed agreed() throws CaptureException {
    Optional<SampleRate> own = plan.input().rate().or(plan.output()::rate);
    int hertz = plan.rate().or(() -> own).orElse(USUAL).hertz();
    for (XtSample kind : XtSamples.KINDS) {
      Optional<Agreed> agreed = agreed(new XtMix(hertz, kind));
      if (agreed.isPresent()) {
        return agreed.get();
      }
    }
    String runs =
        own.map(rate -> "runs at %d Hz, not".formatted(rate.hertz())).orElse("doesn't run");
    throw new CaptureException(
        Kind.UNSUPPORTED_FORMAT,
        "\"%s\" %s at %d Hz.".formatted(plan.input().fullName(), runs, hertz),
        "Leave the sample rate out, or set the device to it.");
  }

  private Optional<Agreed> agreed(XtMix mix) {
    List<ChannelChoice> ins = choices(plan.returns(), input, false);
    List<ChannelChoice> outs = choices(plan.sends(), output, true);
    for (ChannelChoice in : ins) {
      for (ChannelChoice out : outs) {
        Agreed agreed = new Agreed(mix, out, in);
        if (supports(agreed)) {
          return Optional.of(agreed);
        }
      }
    }
    return Optional.empty();
  }

  private List<ChannelChoice> choices(Ports ports, XtDevice device, boolean isOutput) {
    return ChannelChoice.of(ports.channels(), device.getChannelCount(isOutput), masked);
  }

  private boolean supports(Agreed agreed) {
    return plan.isOneDevice()
        ? input.supportsFormat(oneFormat(agreed))
        : input.supportsFormat(new XtFormat(agreed.mix(), in(agreed)))
            && output.supportsFormat(new XtFormat(agreed.mix(), out(agreed)));
  }

  private static XtFormat oneFormat(Agreed agreed) {
    return new XtFormat(
        agreed.mix(),
        new XtChannels(
            agreed.in().count(), agreed.in().mask(), agreed.out().count(), agreed.out().mask()));
  }

  private static XtChannels in(Agreed agreed) {
    return new XtChannels(agreed.in().count(), agreed.in().mask(), 0, 0);
  }

  private static XtChannels out(Agreed agreed) {
    return new XtChannels(0, 0, agreed.out().count(), agreed.out().mask());
  }

  /** What was asked for; else the device's own, which ALSA states as minutes. */
  private double bufferMs(Agreed agreed) throws CaptureException {
    double usual = USUAL_BUFFER * MS / agreed.mix().rate;
    if (plan.bufferSamples() != 0) {
      if (!plan.isOneDevice()) {
        checkRange(input, new XtFormat(agreed.mix(), in(agreed)), plan.input());
        checkRange(output, new XtFormat(agreed.mix(), out(agreed)), plan.output());
      }
      return plan.bufferSamples() * MS / agreed.mix().rate;
    }
    if (!plan.isSampleLocked()) {
      XtBufferSize there = input.getBufferSize(new XtFormat(agreed.mix(), in(agreed)));
      return Math.max(there.min, Math.min(usual, there.max));
    }
    return input.getBufferSize(oneFormat(agreed)).current;
  }

  /** Of joined devices the stream doesn't tell what they took, so it must be one that they take. */
  private void checkRange(XtDevice device, XtFormat format, DriverDevice named)
      throws CaptureException {
    XtBufferSize takes = device.getBufferSize(format);
    long least = Math.round(takes.min * format.mix.rate / MS);
    long most = Math.round(takes.max * format.mix.rate / MS);
    if (plan.bufferSamples() < least || plan.bufferSamples() > most) {
      throw new CaptureException(
          Kind.UNSUPPORTED_FORMAT,
          "\"%s\" takes a buffer of %d to %d samples, not %d."
              .formatted(named.fullName(), least, most, plan.bufferSamples()),
          "Leave the buffer out, or ask for one that it takes.");
    }
  }

  private XtAggregateStreamParams joined(Agreed agreed, XtStreamParams params, double ms) {
    XtAggregateDeviceParams[] both = {
      new XtAggregateDeviceParams(input, in(agreed), ms),
      new XtAggregateDeviceParams(output, out(agreed), ms)
    };
    return new XtAggregateStreamParams(params, both, both.length, agreed.mix(), input);
  }
}
