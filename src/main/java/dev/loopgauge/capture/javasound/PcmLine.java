package dev.loopgauge.capture.javasound;

/**
 * An open line, one way. Samples are interleaved, full scale is 1.0.
 *
 * <p>To fake it, count frames and schedule what goes wrong; see {@code FakeLine} in the tests.
 */
interface PcmLine extends AutoCloseable {
  /** The device's name, for messages. */
  String device();

  /** The channels of a frame. */
  int channels();

  /** How many frames the line can hold. */
  int bufferFrames();

  /** Lets sound flow. */
  void start();

  /**
   * How many frames can be moved now without waiting; the whole buffer after it ran dry or over.
   */
  int ready();

  /** How many frames the device itself has played or recorded since the line was opened. */
  long position();

  /**
   * Plays the frames, or fills them with what was recorded. Waits when they are more than {@link
   * #ready}, for ever when the audio server died.
   *
   * @return how many frames were moved
   */
  int move(float[] interleaved);

  /** Whether nobody has closed it. */
  boolean isOpen();

  /** Stops at once and throws away what still waits to be played. Never throws. */
  @Override
  void close();
}
