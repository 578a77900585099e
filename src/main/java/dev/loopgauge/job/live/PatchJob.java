package dev.loopgauge.job.live;

import dev.loopgauge.capture.AudioBackend;
import dev.loopgauge.capture.CaptureException;
import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.job.Answer;
import dev.loopgauge.job.BudgetChoice;
import dev.loopgauge.job.ChainFile;
import dev.loopgauge.job.ChosenPath;
import dev.loopgauge.job.Ending;
import dev.loopgauge.measure.PatchMap;
import dev.loopgauge.measure.Patching;
import dev.loopgauge.report.patch.PatchDocument;
import dev.loopgauge.setup.Profile;
import dev.loopgauge.setup.SetupException;
import java.io.IOException;
import java.util.List;
import java.util.Optional;

/**
 * Finds out which return hears which send: ticks on the sends that were named, or on all, while all
 * returns of the device listen. With a chain file and no path of it, it prints the file's patch
 * sheet, and ticks it off where a back end or a profile is named.
 *
 * @param live where to play and record; what is named is what should be heard
 * @param budget the chain file, and the path of it that is patched alone
 * @param rig what is wrong with the built-in rig
 * @param agreed whether somebody agreed beforehand that sound is played
 */
public record PatchJob(LiveChoice live, BudgetChoice budget, RigChoice rig, boolean agreed) {
  /**
   * Ticks and listens.
   *
   * @throws CaptureException when the sound failed
   */
  public Answer run(Site site)
      throws CaptureException, SetupException, ChainFormatException, IOException {
    Optional<Profile> kept = live.kept(site.data());
    if (budget.chain().isPresent() && budget.path().isEmpty()) {
      return sheet(site, kept, ChainFile.read(budget.chain().get()));
    }
    DeviceChoice device = live.device();
    Optional<ChosenPath> chosen = budget.chosen();
    AudioBackend backend =
        rig.backend(site.audio(), device.backend(kept), chosen, device.plug(kept, chosen));
    Optional<Patching> said = device.patchingIfSaid(kept, chosen);
    double loopSeconds = chosen.map(ChosenPath::loopSeconds).orElse(0.0);
    Ticking ticking = ticking(site, kept, backend, loopSeconds);
    List<Integer> sends =
        said.map(patching -> patching.sends().stream().sorted().toList()).orElse(List.of());
    return answer(PatchDocument.of(said, ticking.of(sends)));
  }

  private Answer sheet(Site site, Optional<Profile> kept, Chain chain)
      throws CaptureException, IOException {
    PatchDocument sheet = new PatchSheet(live.device(), kept, chain).document();
    if (kept.isEmpty() && live.device().backend().isEmpty()) {
      return answer(sheet);
    }
    AudioBackend backend = rig.backend(site.audio(), live.device().backend(kept), chain);
    site.person().say(sheet.text().stripTrailing());
    PatchMap heard =
        ticking(site, kept, backend, LiveChoice.longestLoopSeconds(chain)).of(sheet.askedSends());
    return answer(sheet.ticked(heard));
  }

  private Ticking ticking(
      Site site, Optional<Profile> kept, AudioBackend backend, double loopSeconds) {
    Consent consent = Consent.of(site.person(), backend, agreed);
    return new Ticking(site, live, kept, backend, consent, loopSeconds);
  }

  private static Answer answer(PatchDocument document) {
    return new Answer(document.isGood() ? Ending.GOOD : Ending.NOT_TRUSTWORTHY, document);
  }
}
