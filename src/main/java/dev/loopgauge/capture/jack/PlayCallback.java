package dev.loopgauge.capture.jack;

import java.util.List;
import java.util.concurrent.atomic.AtomicReference;
import org.jaudiolibs.jnajack.JackPort;

/** Plays the current take; silence before and after it. */
final class PlayCallback extends BlockCallback {
  private final float[] silence;

  PlayCallback(
      List<JackPort> ports,
      int blockSize,
      AtomicReference<RunningTake> current,
      ServerWatch watch) {
    super(ports, blockSize, current, watch);
    this.silence = new float[blockSize];
  }

  @Override
  void rest(JackPort[] ports, int length) {
    for (JackPort port : ports) {
      port.getFloatBuffer().put(0, silence, 0, length);
    }
  }

  @Override
  void move(RunningTake take, int frame, JackPort[] ports, int length) {
    for (int i = 0; i < ports.length; i++) {
      take.play(i, frame, ports[i].getFloatBuffer(), length);
    }
    take.played().block(frame, length);
  }
}
