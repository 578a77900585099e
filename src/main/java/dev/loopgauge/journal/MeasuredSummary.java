package dev.loopgauge.journal;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What a kept measurement tells beside the delay, as far as its document holds it.
 *
 * @param inverted whether the path is; empty where that could not be told
 * @param levelDb the level against the reference, in dB
 * @param levelUncertaintyDb its expanded uncertainty (k = 2), in dB, 0 where it isn't known
 * @param signalToNoiseDb how far the sound stands above the noise, in dB
 * @param copies the other copies of the sound, against the one that was measured
 * @param octaves the octaves whose level could be told
 * @param findings what was found, by the codes of findings
 */
public record MeasuredSummary(
    Optional<Boolean> inverted,
    Optional<Double> levelDb,
    double levelUncertaintyDb,
    Optional<Double> signalToNoiseDb,
    List<Copy> copies,
    List<Octave> octaves,
    Map<String, Told> findings) {
  /** Copies the collections. */
  public MeasuredSummary {
    copies = List.copyOf(copies);
    octaves = List.copyOf(octaves);
    findings = Map.copyOf(findings);
  }

  /** Of a document that holds no number, with what was found instead. */
  public static MeasuredSummary refused(Map<String, Told> findings) {
    return new MeasuredSummary(
        Optional.empty(), Optional.empty(), 0, Optional.empty(), List.of(), List.of(), findings);
  }

  /**
   * A finding in words.
   *
   * @param text what was found
   * @param hint what to try
   */
  public record Told(String text, String hint) {}

  /**
   * Another copy of the sound.
   *
   * @param laterMs how much later it is than the measured one, in ms; negative for earlier
   * @param gain its amplitude against the measured one's, negative where it is the inverse of that
   */
  public record Copy(double laterMs, double gain) {}

  /**
   * An octave.
   *
   * @param centreHz its centre, in Hz
   * @param levelDb its level against the reference, in dB
   * @param uncertaintyDb the expanded uncertainty of that (k = 2), in dB
   */
  public record Octave(double centreHz, double levelDb, double uncertaintyDb) {}
}
