package dev.loopgauge.job.live;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.measure.ChannelPair;
import dev.loopgauge.measure.Patching;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The paths that one sweep measures: those that hear one send, against one reference.
 *
 * @param paths the paths, in the order of the file
 * @param patchings where each of them is plugged in
 */
record RoundStop(List<ChainPath> paths, List<Patching> patchings) {
  /** What the sound of a stop leaves by. */
  private record Sends(int send, Optional<Integer> reference) {}

  /** The stops of some paths that all have a patch, each where its first path stands. */
  static List<RoundStop> of(Chain chain, List<ChainPath> paths, Optional<ChannelPair> reference) {
    Map<Sends, RoundStop> stops = new LinkedHashMap<>();
    for (ChainPath path : paths) {
      Patching patching = patching(chain, path, reference);
      Sends sends = new Sends(patching.rig().send(), patching.reference().map(ChannelPair::send));
      stops
          .computeIfAbsent(sends, s -> new RoundStop(new ArrayList<>(), new ArrayList<>()))
          .add(path, patching);
    }
    return List.copyOf(stops.values());
  }

  /** The path's own reference goes before the one of the whole round. */
  private static Patching patching(Chain chain, ChainPath path, Optional<ChannelPair> reference) {
    ChannelPair rig = ChainPatching.of(path).orElseThrow();
    boolean own = path.patch().orElseThrow().against().isPresent();
    return new Patching(rig, own ? new ChainPatching(chain).reference(path) : reference);
  }

  private void add(ChainPath path, Patching patching) {
    paths.add(path);
    patchings.add(patching);
  }

  /** The sends that play. */
  List<Integer> sends() {
    return patchings.get(0).sends();
  }

  /** The returns that its paths and their references are read from. */
  Stream<Integer> returns() {
    return patchings.stream().flatMap(patching -> patching.returns().stream()).distinct();
  }
}
