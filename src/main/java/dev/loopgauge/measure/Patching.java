package dev.loopgauge.measure;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What is patched where: the rig under test, and the cable beside it, if there is one.
 *
 * @param rig the send into the rig and the return out of it
 * @param reference the send that a cable joins straight to a return; it may be the rig's own send
 *     where that is split
 */
public record Patching(ChannelPair rig, Optional<ChannelPair> reference) {
  /**
   * Checks that the two returns differ.
   *
   * @throws IllegalArgumentException when rig and reference share a return
   */
  public Patching {
    if (reference.isPresent() && reference.get().ret() == rig.ret()) {
      throw new IllegalArgumentException(
          "the reference needs a return of its own, not return " + rig.ret() + " as well");
    }
  }

  /** One loop with no reference beside it. */
  public static Patching single(int send, int ret) {
    return new Patching(new ChannelPair(send, ret), Optional.empty());
  }

  /** The sends that a session must open: the rig's, then the reference's where it is another. */
  public List<Integer> sends() {
    return Stream.concat(Stream.of(rig), reference.stream())
        .map(ChannelPair::send)
        .distinct()
        .toList();
  }

  /** The returns that a session must open: the rig's, then the reference's. */
  public List<Integer> returns() {
    return Stream.concat(Stream.of(rig), reference.stream()).map(ChannelPair::ret).toList();
  }
}
