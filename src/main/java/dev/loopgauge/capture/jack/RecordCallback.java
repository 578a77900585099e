package dev.loopgauge.capture.jack;

import java.util.List;
import java.util.concurrent.atomic.AtomicReference;
import org.jaudiolibs.jnajack.JackPort;

/** Records the current take. */
final class RecordCallback extends BlockCallback {
  RecordCallback(
      List<JackPort> ports,
      int blockSize,
      AtomicReference<RunningTake> current,
      ServerWatch watch) {
    super(ports, blockSize, current, watch);
  }

  @Override
  void rest(JackPort[] ports, int length) {
    // What comes in between takes is nobody's business.
  }

  @Override
  void move(RunningTake take, int frame, JackPort[] ports, int length) {
    for (int i = 0; i < ports.length; i++) {
      take.record(i, frame, ports[i].getFloatBuffer(), length);
    }
    take.recorded().block(frame, length);
  }
}
