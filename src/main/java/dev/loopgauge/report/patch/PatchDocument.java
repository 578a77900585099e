package dev.loopgauge.report.patch;

import dev.loopgauge.measure.PatchMap;
import dev.loopgauge.measure.Patching;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Sparse;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Which return hears which send; with a chain file, its patch sheet.
 *
 * @param outcome {@code patched}, {@code not-patched} where the patch can't be measured by, or
 *     {@code sheet} where nobody has listened yet
 * @param chain the rig's name, with a patch sheet
 * @param asked what shall be patched, where that was said
 * @param sheet each path that has a patch
 * @param withoutPatch the paths that have none
 * @param sends each send and where it is heard
 * @param troubles why it can't be measured by
 */
public record PatchDocument(
    String command,
    String outcome,
    Optional<String> chain,
    List<PairRecord> asked,
    List<SheetRecord> sheet,
    List<String> withoutPatch,
    List<SendRecord> sends,
    List<Integer> silentReturns,
    List<Integer> crossedReturns,
    List<String> incidents,
    List<TroubleRecord> troubles)
    implements Document, Sparse {
  private static final String NOT_PATCHED = "not-patched";

  /**
   * The document of a check.
   *
   * @param said what shall be patched, where that was said
   * @param map what was heard
   */
  public static PatchDocument of(Optional<Patching> said, PatchMap map) {
    List<PairRecord> asked =
        said.stream()
            .flatMap(one -> Stream.concat(Stream.of(one.rig()), one.reference().stream()))
            .map(PairRecord::of)
            .toList();
    return heard(Optional.empty(), asked, List.of(), List.of(), map, HeardTroubles.of(asked, map));
  }

  /**
   * A patch sheet that nobody has ticked off yet.
   *
   * @param chain the rig's name
   * @param sheet each path that has a patch
   * @param withoutPatch the paths that have none
   */
  public static PatchDocument sheet(
      String chain, List<SheetRecord> sheet, List<String> withoutPatch) {
    List<TroubleRecord> troubles = SheetTroubles.of(sheet);
    return new PatchDocument(
        "patch",
        troubles.isEmpty() ? "sheet" : NOT_PATCHED,
        Optional.of(chain),
        asked(sheet),
        sheet,
        withoutPatch,
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        troubles);
  }

  /** The same sheet ticked off by what was heard. */
  public PatchDocument ticked(PatchMap map) {
    List<TroubleRecord> all = new ArrayList<>(HeardTroubles.of(asked, map));
    all.addAll(troubles);
    List<SheetRecord> lines = sheet.stream().map(line -> line.ticked(map)).toList();
    return heard(chain, asked, lines, withoutPatch, map, all);
  }

  /** The references, then the paths. */
  private static List<PairRecord> asked(List<SheetRecord> sheet) {
    return Stream.concat(
            sheet.stream().flatMap(line -> line.reference().stream()),
            sheet.stream().map(SheetRecord::pair))
        .distinct()
        .toList();
  }

  private static PatchDocument heard(
      Optional<String> chain,
      List<PairRecord> asked,
      List<SheetRecord> sheet,
      List<String> withoutPatch,
      PatchMap map,
      List<TroubleRecord> troubles) {
    return new PatchDocument(
        "patch",
        troubles.isEmpty() ? "patched" : NOT_PATCHED,
        chain,
        asked,
        sheet,
        withoutPatch,
        map.sends().stream().map(send -> SendRecord.of(map, send)).toList(),
        map.silentReturns(),
        map.crossedReturns(),
        map.incidents(),
        troubles);
  }

  @Override
  public Set<String> leftOut() {
    return Set.of("chain", "asked", "sheet", "withoutPatch", "troubles");
  }

  /** Whether it can be measured by: all is patched as was said, and no return hears two sends. */
  public boolean isGood() {
    return !outcome.equals(NOT_PATCHED);
  }

  /** The sends that shall be heard. */
  public List<Integer> askedSends() {
    return asked.stream().map(PairRecord::send).distinct().sorted().toList();
  }

  @Override
  public String text() {
    return sheet.isEmpty()
        ? new PatchText(isGood(), asked, sends, silentReturns, crossedReturns, incidents, troubles)
            .text()
        : new SheetText(
                chain.orElse("the rig"),
                sheet,
                withoutPatch,
                sends,
                crossedReturns,
                incidents,
                troubles)
            .text();
  }
}
