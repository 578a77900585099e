package dev.loopgauge.capture.jack;

import java.util.List;
import java.util.concurrent.atomic.AtomicReference;

/** Records the current take. */
final class RecordCallback extends BlockCallback {
  RecordCallback(
      ServerClient client,
      List<ServerPort> ports,
      int blockSize,
      AtomicReference<CallbackTake> current,
      ServerWatch watch) {
    super(client, ports, blockSize, current, watch);
  }

  @Override
  void rest(ServerPort[] ports, int length) {
    // What comes in between takes is nobody's business.
  }

  @Override
  void move(CallbackTake take, int frame, ServerPort[] ports, int length) {
    for (int i = 0; i < ports.length; i++) {
      take.record(i, frame, ports[i].block(length), length);
    }
    take.recorded().block(frame, length);
  }
}
