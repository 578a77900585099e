package dev.loopgauge.report.logged;

import dev.loopgauge.journal.AspectChange;
import dev.loopgauge.journal.ComparedAspect;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.signal.Decibels;
import java.util.Locale;

/** What changed about a path, in words: how much, and what to check. */
public final class AspectWords {
  private static final double KILO = 1000;

  private AspectWords() {}

  /** The name of an aspect. */
  public static String name(ComparedAspect aspect) {
    return aspect.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  /**
   * The words, a sentence or a question without its full stop.
   *
   * @param change what changed
   */
  public static String of(AspectChange change) {
    if (change instanceof AspectChange.Delay delay) {
      return delay(delay);
    }
    if (change instanceof AspectChange.Refused refused) {
      return refused(refused);
    }
    if (change instanceof AspectChange.Polarity polarity) {
      return polarity.inverted()
          ? "inverted since: was polarity reversed at a channel, cable or adapter?"
          : "no longer inverted: was polarity put right at a channel or cable?";
    }
    if (change instanceof AspectChange.Arrival arrival) {
      return arrival(arrival);
    }
    if (change instanceof AspectChange.Level level) {
      return db(level.byDb()) + ": was a gain, pad or fader moved?";
    }
    if (change instanceof AspectChange.Response response) {
      return response(response);
    }
    if (change instanceof AspectChange.Noise noise) {
      return "%s dB less between sound and noise: is there hum, a fan or an open microphone?"
          .formatted(Numbers.plain(noise.byDb(), 1));
    }
    return found((AspectChange.Found) change);
  }

  private static String delay(AspectChange.Delay delay) {
    return "%s samples (%s ms) %s"
        .formatted(
            Numbers.plain(
                Math.abs(delay.shift().samples()),
                Logs.decimals(delay.shift().uncertaintySamples())),
            Numbers.plain(Math.abs(delay.ms()), 2),
            delay.ms() > 0 ? "later" : "earlier");
  }

  private static String refused(AspectChange.Refused refused) {
    return refused.silent()
        ? "nothing heard any more: is the path muted, unpatched or turned down?"
        : "no trustworthy reading any more" + refused.why().map(why -> ": " + why).orElse("");
  }

  private static String arrival(AspectChange.Arrival arrival) {
    String where =
        "%s ms %s than the measured arrival"
            .formatted(
                Numbers.plain(Math.abs(arrival.laterMs()), 2),
                arrival.laterMs() > 0 ? "later" : "earlier");
    if (arrival.before() == 0) {
      return "another arrival %s, %s: is dry signal leaking, or the input patched twice?"
          .formatted(where, db(gainDb(arrival.after())));
    }
    if (arrival.after() == 0) {
      return "the arrival " + where + " is gone: was a leak or a double patch removed?";
    }
    return "the arrival %s was %s, is %s: was a mix of dry and wet signal changed?"
        .formatted(where, signed(arrival.before()), signed(arrival.after()));
  }

  private static String signed(double gain) {
    return db(gainDb(gain)) + (gain < 0 ? " and inverted" : "");
  }

  private static double gainDb(double gain) {
    return Decibels.ofFactor(gain);
  }

  private static String response(AspectChange.Response response) {
    String others =
        response.octaves() > 1 ? ", %d octaves changed".formatted(response.octaves()) : "";
    return "%s is %s against the other octaves%s: was an EQ or filter changed, or a cable damaged?"
        .formatted(hertz(response.centreHz()), db(response.byDb()), others);
  }

  private static String hertz(double centreHz) {
    return centreHz < KILO
        ? Numbers.brief(centreHz, 1) + " Hz"
        : Numbers.brief(centreHz / KILO, 1) + " kHz";
  }

  private static String db(double byDb) {
    return Numbers.plain(Math.abs(byDb), 1) + " dB " + (byDb > 0 ? "louder" : "quieter");
  }

  private static String found(AspectChange.Found found) {
    return found.gone()
        ? "no longer so: " + found.told().text()
        : found.told().text() + ": " + found.told().hint();
  }
}
