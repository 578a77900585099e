package dev.loopgauge.report.budget;

import dev.loopgauge.chain.Guidance;
import dev.loopgauge.chain.Instrument;
import dev.loopgauge.chain.StageDelay;
import dev.loopgauge.plan.Comb;
import dev.loopgauge.plan.DirectSound;
import dev.loopgauge.plan.EarlierFeed;
import dev.loopgauge.plan.OwnVoice;
import java.util.LinkedHashMap;
import java.util.Map;

/** What there is to say of a path beside its limits, as keys; what there is not has no key. */
final class NotesJson {
  private NotesJson() {}

  static void put(Map<String, Object> json, PathNotes notes) {
    notes.earlier().ifPresent(feed -> json.put("earlierFeed", earlier(feed)));
    notes.talker().ifPresent(voice -> json.put("returnsToTalker", returned(notes, voice)));
    notes.guidance().ifPresent(row -> json.put("guidance", guidance(notes, row)));
    notes.ownVoice().ifPresent(comb -> json.put("ownVoice", ownVoice(comb)));
    notes.direct().ifPresent(sound -> json.put("directSound", direct(sound)));
  }

  private static Map<String, Object> earlier(EarlierFeed feed) {
    Map<String, Object> json = new LinkedHashMap<>();
    DelayKeys.put(json, "delay", feed.delay());
    json.put("standing", feed.standing().label());
    json.put("leavesOut", feed.spared().stream().map(StageDelay::name).toList());
    return json;
  }

  private static Map<String, Object> returned(PathNotes notes, OwnVoice voice) {
    Map<String, Object> json = new LinkedHashMap<>();
    DelayKeys.put(json, "roundTrip", notes.budget().delay());
    json.put("ownVoice", voice.label());
    json.put("source", OwnVoice.SOURCE);
    return json;
  }

  private static Map<String, Object> guidance(PathNotes notes, Guidance row) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("instrument", notes.instrument().map(Instrument::label).orElse(null));
    json.put("goodMs", DelayKeys.ms(row.goodMs()));
    json.put("fairMs", DelayKeys.ms(row.fairMs()));
    json.put("rating", row.rating(notes.budget().delay().ms()).label());
    json.put("source", Guidance.SOURCE);
    return json;
  }

  private static Map<String, Object> ownVoice(Comb comb) {
    Map<String, Object> json = new LinkedHashMap<>();
    Combs.putNulls(json, comb);
    return json;
  }

  private static Map<String, Object> direct(DirectSound sound) {
    Map<String, Object> json = new LinkedHashMap<>();
    DelayKeys.put(json, "direct", sound.direct());
    DelayKeys.put(json, "pathLater", sound.pathLater());
    Combs.put(json, sound.overlap());
    return json;
  }
}
