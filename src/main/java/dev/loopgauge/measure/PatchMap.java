package dev.loopgauge.measure;

import dev.loopgauge.estimate.result.Measurement;
import dev.loopgauge.signal.Latency;
import java.util.List;

/**
 * Which return hears which send.
 *
 * @param sends the sends that were tried, in turn
 * @param returns the returns that listened
 * @param heard who heard whom, by turn
 * @param incidents what was lost meanwhile, as sentences; a send not heard may be heard without it
 */
public record PatchMap(
    List<Integer> sends, List<Integer> returns, List<Heard> heard, List<String> incidents) {
  /**
   * One return that hears one send.
   *
   * @param send the send that ticked
   * @param ret the return that heard it
   * @param levelDb how loud against what was played, in dB
   * @param delay how late, with the sound card's own delay
   */
  public record Heard(int send, int ret, double levelDb, Latency delay) {
    static Heard of(int send, int ret, Measurement measurement) {
      return new Heard(send, ret, measurement.levelDb(), measurement.delay());
    }
  }

  /** Copies the lists. */
  public PatchMap {
    sends = List.copyOf(sends);
    returns = List.copyOf(returns);
    heard = List.copyOf(heard);
    incidents = List.copyOf(incidents);
  }

  /** The returns that hear a send. */
  public List<Heard> hearing(int send) {
    return heard.stream().filter(one -> one.send() == send).toList();
  }

  /** The sends that no return hears. */
  public List<Integer> unheardSends() {
    return sends.stream().filter(send -> hearing(send).isEmpty()).toList();
  }

  /** The returns that hear no send. */
  public List<Integer> silentReturns() {
    return returns.stream().filter(ret -> sendsHeardBy(ret) == 0).toList();
  }

  /** The returns that hear more than one send: a rig fed twice, or a cable too many. */
  public List<Integer> crossedReturns() {
    return returns.stream().filter(ret -> sendsHeardBy(ret) > 1).toList();
  }

  /** Whether a pair is joined: its return hears its send. */
  public boolean joins(ChannelPair pair) {
    return hearing(pair.send()).stream().anyMatch(one -> one.ret() == pair.ret());
  }

  /** Whether a pair is joined to each other and to nothing else. */
  public boolean joinsOnly(ChannelPair pair) {
    return joins(pair) && hearing(pair.send()).size() == 1 && sendsHeardBy(pair.ret()) == 1;
  }

  private long sendsHeardBy(int ret) {
    return heard.stream().filter(one -> one.ret() == ret).count();
  }
}
