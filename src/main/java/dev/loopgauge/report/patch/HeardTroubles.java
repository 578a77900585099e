package dev.loopgauge.report.patch;

import dev.loopgauge.measure.ChannelPair;
import dev.loopgauge.measure.PatchMap;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/** What was heard otherwise than asked. */
final class HeardTroubles {
  private static final String NOT_HEARD = "is the cable in, the path open, the input gain up?";

  private final List<PairRecord> asked;
  private final PatchMap map;
  private final Set<PairRecord> told = new HashSet<>();
  private final List<TroubleRecord> troubles = new ArrayList<>();

  private HeardTroubles(List<PairRecord> asked, PatchMap map) {
    this.asked = asked;
    this.map = map;
  }

  /**
   * All of it: two crossed cables first, then what is not where it was asked for, then what can't
   * be told apart.
   *
   * @param asked what shall be patched; empty where each send shall be heard
   */
  static List<TroubleRecord> of(List<PairRecord> asked, PatchMap map) {
    HeardTroubles troubles = new HeardTroubles(asked, map);
    troubles.look();
    return List.copyOf(troubles.troubles);
  }

  private void look() {
    for (PairRecord one : asked) {
      asked.stream().filter(other -> crossed(one, other)).findFirst().ifPresent(o -> cross(one, o));
    }
    asked.stream().filter(pair -> !told.contains(pair) && !joins(pair)).forEach(this::astray);
    map.crossedReturns().forEach(this::together);
    if (asked.isEmpty() && !map.unheardSends().isEmpty()) {
      trouble("send " + list(map.unheardSends()) + " is not heard", NOT_HEARD);
    }
  }

  private boolean joins(PairRecord pair) {
    return map.joins(new ChannelPair(pair.send(), pair.ret()));
  }

  private boolean crossed(PairRecord one, PairRecord other) {
    return !told.contains(one)
        && one.send() != other.send()
        && one.ret() != other.ret()
        && !joins(one)
        && !joins(other)
        && joins(new PairRecord(one.send(), other.ret()))
        && joins(new PairRecord(other.send(), one.ret()));
  }

  private void cross(PairRecord one, PairRecord other) {
    told.add(one);
    told.add(other);
    trouble(
        "sends %d and %d are crossed: swap returns %d and %d"
            .formatted(one.send(), other.send(), one.ret(), other.ret()),
        "swap the two cables: return %d hears send %d, return %d hears send %d"
            .formatted(one.ret(), other.send(), other.ret(), one.send()));
  }

  private void astray(PairRecord pair) {
    List<PatchMap.Heard> elsewhere = map.hearing(pair.send());
    trouble(
        "return " + pair.ret() + " doesn't hear send " + pair.send(),
        elsewhere.isEmpty()
            ? NOT_HEARD
            : "move the cable, or name the other return: "
                + elsewhere.stream()
                    .map(heard -> "send " + pair.send() + " is on return " + heard.ret())
                    .collect(Collectors.joining(", ")));
  }

  private void together(int ret) {
    List<Integer> sends =
        map.sends().stream().filter(send -> joins(new PairRecord(send, ret))).toList();
    trouble(
        "return " + ret + " hears more than one send: " + list(sends),
        "is it patched twice? leave one cable in");
  }

  private void trouble(String text, String hint) {
    troubles.add(new TroubleRecord(text, hint));
  }

  private static String list(List<Integer> channels) {
    return channels.stream().map(String::valueOf).collect(Collectors.joining(", "));
  }
}
