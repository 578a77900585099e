package dev.loopgauge.report.budget;

import dev.loopgauge.chain.BlockSizes;
import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.chain.PathBudget;
import dev.loopgauge.plan.PathDelays;
import dev.loopgauge.plan.PictureBlock;
import dev.loopgauge.plan.PictureMatch;
import dev.loopgauge.plan.PictureRule;
import dev.loopgauge.report.form.Sheet;
import java.util.Map;
import java.util.Optional;

/**
 * What the budget of a path says of its picture.
 *
 * @param match how sound stands to picture
 * @param closest the block size that would bring them closest, where it matters
 */
record PictureBudget(PictureMatch match, Optional<PictureBlock> closest) {
  /** Of a path of the chain; empty for one without a picture. */
  static Optional<PictureBudget> of(Chain chain, PathBudget budget, PictureRule rule) {
    ChainPath path = chain.path(budget.name());
    return PictureMatch.of(chain, path, budget.delay(), rule)
        .map(
            match ->
                new PictureBudget(
                    match,
                    PictureBlock.closest(
                        chain, path, PathDelays.predicted(), rule, BlockSizes.USUAL)));
  }

  /** Tells it. */
  void tell(Sheet sheet) {
    sheet.line(match.path() + ", picture " + match.picture() + ": " + Pictures.standing(match));
    sheet.line("  " + Pictures.advice(match));
    closest.ifPresent(block -> sheet.line("  " + Pictures.closest(block)));
  }

  /** As keys of a document. */
  Map<String, Object> json() {
    Map<String, Object> json = Pictures.json(match);
    closest.ifPresent(block -> json.put("closestBlock", Pictures.json(block)));
    return json;
  }
}
