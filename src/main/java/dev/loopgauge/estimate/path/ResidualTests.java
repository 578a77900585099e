package dev.loopgauge.estimate.path;

import dev.loopgauge.estimate.integrity.GapSearch;
import dev.loopgauge.estimate.integrity.LostSound;
import dev.loopgauge.estimate.reading.InParallel;
import dev.loopgauge.estimate.reading.Reading;
import dev.loopgauge.estimate.spectrum.BlockPlan;
import dev.loopgauge.estimate.spectrum.BlockRange;
import dev.loopgauge.estimate.spectrum.FittedArrival;
import dev.loopgauge.estimate.spectrum.Packed;
import dev.loopgauge.estimate.spectrum.RealFft;
import dev.loopgauge.estimate.spectrum.ShortBlocks;
import dev.loopgauge.estimate.spectrum.Spectra;
import dev.loopgauge.estimate.spectrum.Subtraction;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/**
 * What a return holds besides the arrivals of its reference, looked at block by block.
 *
 * @param residual how loud it is in each frequency
 * @param coherence how alike reference and return are
 * @param covariation whether what is left comes when the reference is loud
 * @param lostSound where the arrivals are missing, for each reading
 */
public record ResidualTests(
    Residual residual,
    Coherence coherence,
    PowerCovariation covariation,
    List<LostSound> lostSound) {
  private static ResidualTests empty(RealFft piece, int taps) {
    int blockLength = piece.length() * PowerCovariation.PIECES;
    return new ResidualTests(
        new Residual(blockLength, taps),
        new Coherence(blockLength),
        new PowerCovariation(piece),
        new ArrayList<>());
  }

  /**
   * Subtracts what a path makes of the references from the returns.
   *
   * @param response the path
   * @param arrivals the arrivals in it, the measured one first
   */
  public static ResidualTests of(
      Spectra spectra, PathModel response, List<FittedArrival> arrivals) {
    BlockPlan plan = plan(spectra, arrivals, spectra.longestReference());
    RealFft fft = spectra.transforms().ofLength(plan.transform());
    RealFft block = spectra.transforms().ofLength(ShortBlocks.lengthAt(spectra.rate()));
    RealFft piece = spectra.transforms().ofLength(block.length() / PowerCovariation.PIECES);
    int wholeDelay = (int) Math.rint(response.delay());
    double late = response.delay() - wholeDelay;
    double[] filter = response.spectrum(fft);
    Packed.fractionalDelay(filter, -late);
    List<List<BlockRange>> ranges = BlockRange.shares(spectra.readings(), plan);
    Work work =
        new Work(
            spectra.readings(), plan, fft, block, piece, wholeDelay, late, filter, response.taps());
    List<ResidualTests> shares = InParallel.map(ranges, work);
    ResidualTests all = empty(piece, response.taps());
    for (Reading reading : spectra.readings()) {
      all.lostSound.add(new LostSound(reading));
    }
    for (int i = 0; i < shares.size(); i++) {
      all.add(shares.get(i), ranges.get(i));
    }
    return all;
  }

  /** The work of subtracting, share by share of the blocks. */
  @SuppressWarnings("ArrayRecordComponent") // used within one call, never compared
  private record Work(
      List<Reading> readings,
      BlockPlan plan,
      RealFft fft,
      RealFft block,
      RealFft piece,
      int wholeDelay,
      double late,
      double[] filter,
      int taps)
      implements Function<List<BlockRange>, ResidualTests> {
    @Override
    public ResidualTests apply(List<BlockRange> share) {
      ResidualTests ofShare = empty(piece, taps);
      ShortBlocks blocks = new ShortBlocks(block, late);
      try (Subtraction source = new Subtraction(plan, fft, wholeDelay, filter)) {
        ofShare.add(readings, share, source, blocks);
      }
      return ofShare;
    }
  }

  /** The segments in which the arrival is missing. */
  public List<LostSound.Gap> gaps() {
    List<LostSound.Gap> gaps = new ArrayList<>();
    for (LostSound lost : lostSound) {
      gaps.addAll(GapSearch.of(lost));
    }
    return gaps;
  }

  /**
   * Blocks that reach as far as the fitted filter and the arrivals do.
   *
   * @param length of the longest reference
   */
  static BlockPlan plan(Spectra spectra, List<FittedArrival> arrivals, int length) {
    int shortBlock = ShortBlocks.lengthAt(spectra.rate());
    double far = 0;
    for (FittedArrival arrival : arrivals) {
      far = Math.max(far, Math.abs(arrival.lag() - arrivals.get(0).lag()));
    }
    int margin = shortBlock + spectra.reach() + (int) far + 1;
    return BlockPlan.of(length, margin, shortBlock);
  }

  /** Adds some ranges of blocks; each range has lost sound of its own. */
  private void add(
      List<Reading> readings,
      List<BlockRange> ranges,
      Subtraction subtraction,
      ShortBlocks blocks) {
    for (BlockRange range : ranges) {
      Reading reading = readings.get(range.reading());
      LostSound lost = new LostSound(reading);
      for (int block = range.from(); block < range.to(); block++) {
        subtraction.run(reading, block);
        for (int start = 0; start < subtraction.length(); start += blocks.length()) {
          blocks.load(subtraction, start);
          residual.add(blocks);
          coherence.add(blocks);
          covariation.add(subtraction, start);
        }
        lost.add(subtraction);
      }
      lostSound.add(lost);
    }
  }

  /** Adds a share of the work, whose lost sound is that of its ranges. */
  private void add(ResidualTests share, List<BlockRange> ranges) {
    residual.add(share.residual);
    coherence.add(share.coherence);
    covariation.add(share.covariation);
    for (int i = 0; i < ranges.size(); i++) {
      lostSound.get(ranges.get(i).reading()).add(share.lostSound.get(i));
    }
  }
}
