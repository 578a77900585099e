package dev.loopgauge.measure;

import dev.loopgauge.capture.Incident;
import dev.loopgauge.estimate.result.Finding;
import dev.loopgauge.estimate.result.FindingCode;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** What only a live measurement can find. */
final class LiveFindings {
  private LiveFindings() {}

  /** What was lost, each kind of loss once. */
  static List<Finding> lost(List<Incident> incidents) {
    return incidents.stream()
        .collect(Collectors.groupingBy(Incident::text, LinkedHashMap::new, Collectors.toList()))
        .values()
        .stream()
        .map(LiveFindings::lostAlike)
        .toList();
  }

  private static Finding lostAlike(List<Incident> alike) {
    Incident first = alike.get(0);
    String hint =
        switch (first.kind()) {
          case DROPOUT -> "close other programs or take a larger buffer, then measure again";
          case BLOCK_SIZE_CHANGED -> "leave the block size alone meanwhile, then measure again";
        };
    String times = alike.size() == 1 ? "" : " " + alike.size() + " times:";
    return new Finding(FindingCode.DROPOUT, true, (times + " " + first.text()).strip(), hint);
  }

  /** That turns were played again is told; the number doesn't suffer from it. */
  static Finding playedAgain(Turns turns) {
    String more = turns.incidents().size() > 1 ? ", and more" : "";
    return Finding.told(
        FindingCode.DROPOUT,
        "%s lost sound and %s played again: %s%s"
            .formatted(
                turns.lost() == 1 ? "one turn" : turns.lost() + " turns",
                turns.lost() == 1 ? "was" : "were",
                turns.incidents().get(0).text().replaceFirst("[.]$", ""),
                more),
        "close other programs or take a larger buffer, so that the show doesn't lose sound either");
  }

  static Finding noReference(ChannelPair reference, String why) {
    return new Finding(
        FindingCode.NO_REFERENCE,
        true,
        "reference return "
            + reference.ret()
            + " doesn't hear what send "
            + reference.send()
            + " plays: "
            + why,
        "is the reference cable in send "
            + reference.send()
            + " and return "
            + reference.ret()
            + "? `loopgauge patch` finds it");
  }

  static Finding sameSignal(ChannelPair rig, ChannelPair reference) {
    return new Finding(
        FindingCode.SAME_SIGNAL,
        true,
        "returns %d and %d are sample for sample alike: they may be one channel twice"
            .formatted(rig.ret(), reference.ret()),
        rig.send() == reference.send()
            ? "feed the reference from a send of its own: then quiet ticks can show that each return"
                + " hears its own"
            : "does the device have a second channel of its own? `loopgauge patch` shows which return"
                + " hears which send");
  }

  static Finding invertedReference(ChannelPair reference) {
    return new Finding(
        FindingCode.INVERTED,
        false,
        "the reference itself arrives inverted on return " + reference.ret(),
        "the path's polarity is given against it: check how the reference cable is wired");
  }

  static Finding tooMuchSkew(ChannelPair cable, double samples, double most) {
    return new Finding(
        FindingCode.BEYOND_WINDOW,
        true,
        String.format(
            Locale.ROOT,
            "return %d comes %.1f samples %s the reference; two pairs of channels of one card differ"
                + " by %.0f at most",
            cable.ret(),
            Math.abs(samples),
            samples < 0 ? "before" : "after",
            most),
        String.format(
            Locale.ROOT,
            "is the path still patched? join send %d straight to return %d with a cable",
            cable.send(),
            cable.ret()));
  }

  static Finding uncalibrated(String why, String hint) {
    return new Finding(
        FindingCode.UNCALIBRATED,
        false,
        "the sound card's own delay is in the number: " + why,
        hint);
  }
}
