package dev.loopgauge.capture;

/**
 * A session on an audio server whose programs state their latency to each other. What is stated may
 * be true or not; a double states what it was told to.
 */
public interface GraphSession extends AudioSession {
  /**
   * The latency that the graph reports between a send and a return. The server spreads what
   * programs state a moment after the channels are opened: this waits until it stays the same.
   *
   * @param send the send, counted from 0 in the order of the request
   * @param ret the return, counted from 0 in the order of the request
   * @throws CaptureException when the server no longer answers
   */
  Stated stated(int send, int ret) throws CaptureException;

  /**
   * The same way, seen from either end; the two differ where a program states only one of them.
   *
   * @param fromSend what is reported from the send onwards
   * @param toReturn what is reported up to the return
   */
  record Stated(PortLatency fromSend, PortLatency toReturn) {
    /** The shortest way up to the return, in samples: what a host would compensate. */
    public int samples() {
      return toReturn.minSamples();
    }

    /** Whether both ends report the same. */
    public boolean isOne() {
      return fromSend.minSamples() == toReturn.minSamples();
    }
  }
}
