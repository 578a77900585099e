package dev.loopgauge.measure;

import dev.loopgauge.capture.Take;
import dev.loopgauge.signal.Signal;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * A plan in frames: silence, then for each turn the stimulus and a gap to listen in.
 *
 * @param played the stimulus at its level
 * @param leadIn frames of silence before the first turn
 * @param listen frames of silence after each stimulus
 * @param after frames of silence after the last turn
 * @param turns how many times it is played
 */
record Schedule(Signal played, int leadIn, int listen, int after, int turns) {
  /**
   * How far apart clocks are, or a converter that nobody tells of puts them, at the most: one was
   * seen to be 977 ppm off.
   */
  private static final int CLOCKS_PPM = 1000;

  /** Half of what a turn is given to ring out in. */
  private static final double MOST_LEEWAY_SECONDS = 0.0075;

  /** A take in which every send plays in every turn. */
  Take together(int sends) {
    Signal all = played(0, turns);
    return new Take(IntStream.range(0, sends).mapToObj(send -> all).toList(), frames(), gaps());
  }

  /**
   * A take in which the first send plays in the first turn, the second in the second, and so on.
   */
  Take inTurn() {
    List<Signal> sends =
        IntStream.range(0, turns).mapToObj(turn -> played(turn, turn + 1)).toList();
    return new Take(sends, frames(), gaps());
  }

  /** How long a turn is, in frames. */
  int period() {
    return played.length() + listen;
  }

  /** The frame with which a turn begins. */
  int start(int turn) {
    return leadIn + turn * period();
  }

  /** How long a take is. */
  int frames() {
    return start(turns) + after;
  }

  /** By how many frames a later turn may begin earlier than the first, by the device's clocks. */
  int leeway() {
    return Math.min(
        (int) Math.ceil(frames() * (CLOCKS_PPM / 1e6)),
        played.rate().samplesIn(MOST_LEEWAY_SECONDS));
  }

  private Signal played(int fromTurn, int toTurn) {
    double[] samples = new double[frames()];
    for (int turn = fromTurn; turn < toTurn; turn++) {
      played.copyTo(0, samples, start(turn), played.length());
    }
    return Signal.of(played.rate(), samples);
  }

  private List<Take.Segment> gaps() {
    int sounding = soundingLength();
    List<Take.Segment> gaps = new ArrayList<>();
    for (int turn = 0; turn < turns; turn++) {
      int end = turn + 1 < turns ? start(turn + 1) : frames();
      gaps.add(new Take.Segment(start(turn) + sounding, end));
    }
    return gaps;
  }

  /** A click is followed by silence of its own, in which a loop could grow already. */
  private int soundingLength() {
    int length = played.length();
    while (length > 0 && played.at(length - 1) == 0) {
      length--;
    }
    return length;
  }
}
