package dev.loopgauge.job.live;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.job.UsageException;
import dev.loopgauge.measure.ChannelPair;
import dev.loopgauge.report.patch.PatchDocument;
import dev.loopgauge.report.patch.SheetRecord;
import dev.loopgauge.setup.Profile;
import java.util.List;
import java.util.Optional;

/**
 * The patch sheet of a chain file.
 *
 * @param device what was chosen; a reference in it goes over that of profile and file
 * @param kept the profile
 * @param chain the file
 */
record PatchSheet(DeviceChoice device, Optional<Profile> kept, Chain chain) {
  /**
   * The sheet, not ticked off.
   *
   * @throws UsageException when a send or return was chosen, which is for one path, or no path has
   *     a patch
   */
  PatchDocument document() {
    if (device.send().isPresent() || device.returned().isPresent()) {
      throw new UsageException(
          "--send and --return are for one path, found none",
          "add --path NAME, or leave them out for the whole patch sheet");
    }
    List<SheetRecord> lines =
        chain.paths().values().stream()
            .filter(path -> path.patch().isPresent())
            .map(this::line)
            .toList();
    if (lines.isEmpty()) {
      throw new UsageException(
          "no path of the chain file says where it is patched",
          "add patch: { send: 2, return: 2 } to each, or name one by --path");
    }
    List<String> without =
        chain.paths().values().stream()
            .filter(path -> path.patch().isEmpty())
            .map(ChainPath::name)
            .toList();
    return PatchDocument.sheet(chain.name(), lines, without);
  }

  private SheetRecord line(ChainPath path) {
    return SheetRecord.of(path, ChainPatching.of(path).orElseThrow(), reference(path));
  }

  private Optional<ChannelPair> reference(ChainPath path) {
    boolean own = path.patch().filter(patch -> patch.against().isPresent()).isPresent();
    return own ? new ChainPatching(chain).reference(path) : device.reference(kept, chain);
  }
}
