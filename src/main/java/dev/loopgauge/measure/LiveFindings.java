package dev.loopgauge.measure;

import dev.loopgauge.capture.Incident;
import dev.loopgauge.estimate.result.Finding;
import dev.loopgauge.estimate.result.FindingCode;

/** What only a live measurement can find. */
final class LiveFindings {
  private LiveFindings() {}

  static Finding lost(Incident incident) {
    String hint =
        switch (incident.kind()) {
          case DROPOUT -> "close other programs or take a larger buffer, then measure again";
          case BLOCK_SIZE_CHANGED -> "leave the block size alone meanwhile, then measure again";
        };
    return new Finding(FindingCode.DROPOUT, true, incident.text(), hint);
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

  static Finding invertedReference(ChannelPair reference) {
    return new Finding(
        FindingCode.INVERTED,
        false,
        "the reference itself arrives inverted on return " + reference.ret(),
        "the path's polarity is given against it: check how the reference cable is wired");
  }

  static Finding uncalibrated(String why, String hint) {
    return new Finding(
        FindingCode.UNCALIBRATED,
        false,
        "the sound card's own delay is in the number: " + why,
        hint);
  }
}
