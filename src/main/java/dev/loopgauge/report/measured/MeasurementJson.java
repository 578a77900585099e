package dev.loopgauge.report.measured;

import dev.loopgauge.estimate.Arrival;
import dev.loopgauge.estimate.Band;
import dev.loopgauge.estimate.Finding;
import dev.loopgauge.estimate.Measurement;
import dev.loopgauge.estimate.Response;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.verify.Comparison;
import dev.loopgauge.verify.Explanation;
import dev.loopgauge.verify.ExtraMeasurement;
import dev.loopgauge.verify.TowardsLimit;
import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * The measurement document as ordered maps. Samples carry four decimals, milliseconds six: a digit
 * beyond what any capture resolves, so that sums stay exact, and no noise of arithmetic.
 */
final class MeasurementJson {
  private static final int SAMPLE_DECIMALS = 4;
  private static final int MS_DECIMALS = 6;
  private static final int DB_DECIMALS = 2;

  private static final int PPM_DECIMALS = 3;
  private static final int HZ_DECIMALS = 2;

  private MeasurementJson() {}

  static Map<String, Object> of(MeasurementDocument document) {
    Map<String, Object> json = Document.head(document.command(), document.outcome().label());
    json.put("measurement", document.measurement().map(MeasurementJson::measurement).orElse(null));
    json.put(
        "findings", document.estimate().findings().stream().map(MeasurementJson::finding).toList());
    json.put("comparison", document.comparison().map(MeasurementJson::comparison).orElse(null));
    document
        .measurement()
        .flatMap(Measurement::response)
        .ifPresent(response -> json.put("response", response(response)));
    document.hostCheck().ifPresent(check -> json.put("hostCheck", HostCheckLines.json(check)));
    return json;
  }

  private static Map<String, Object> measurement(Measurement m) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("sampleRateHz", m.delay().rate().hertz());
    json.put("delaySamples", samples(m.delay().samples()));
    json.put("delayMs", ms(m.delay().ms()));
    json.put("uncertaintySamples", Numbers.roundedUp(m.uncertaintySamples(), SAMPLE_DECIMALS));
    json.put("uncertaintyMs", Numbers.roundedUp(m.uncertaintyMs(), MS_DECIMALS));
    json.put("coverageFactor", Measurement.COVERAGE_FACTOR);
    json.put("polarity", m.polarity().label());
    json.put("levelDb", db(m.levelDb()));
    json.put("signalToNoiseDb", db(m.signalToNoiseDb()));
    json.put("method", m.method().label());
    json.put("repeats", m.repeats());
    json.put(
        "clockDriftPpm",
        m.clockDriftPpm().isPresent()
            ? Numbers.rounded(m.clockDriftPpm().getAsDouble(), PPM_DECIMALS)
            : null);
    json.put(
        "clockDriftUncertaintyPpm",
        m.clockDrift().map(d -> Numbers.roundedUp(d.uncertaintyPpm(), PPM_DECIMALS)).orElse(null));
    json.put("arrivals", m.arrivals().stream().map(MeasurementJson::arrival).toList());
    json.put("bands", m.bands().stream().map(MeasurementJson::band).toList());
    return json;
  }

  private static Map<String, Object> arrival(Arrival arrival) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("delaySamples", samples(arrival.delaySamples()));
    json.put("levelDb", db(arrival.levelDb()));
    json.put("polarity", arrival.polarity().label());
    return json;
  }

  private static Map<String, Object> band(Band band) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("centreHz", Numbers.rounded(band.centreHz(), HZ_DECIMALS));
    json.put("delaySamples", samples(band.delaySamples()));
    json.put("uncertaintySamples", Numbers.roundedUp(band.uncertaintySamples(), SAMPLE_DECIMALS));
    return json;
  }

  private static Map<String, Object> response(Response response) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("firstSamples", samples(response.firstSamples()));
    json.put("stepSamples", samples(response.stepSamples()));
    json.put("levelsDb", response.levelsDb().stream().map(MeasurementJson::db).toList());
    return json;
  }

  static Map<String, Object> finding(Finding finding) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("code", finding.code().label());
    json.put("refuses", finding.refuses());
    json.put("text", finding.text());
    json.put("hint", finding.hint());
    return json;
  }

  static Map<String, Object> comparison(Comparison c) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("path", c.path());
    json.put("predictedSamples", samples(c.predicted().samples()));
    json.put("predictedMs", ms(c.predicted().ms()));
    json.put("toleranceSamples", samples(c.toleranceSamples()));
    json.put("differenceSamples", samples(c.difference().samples()));
    json.put("differenceMs", ms(c.difference().ms()));
    json.put("verdict", c.verdict().label());
    json.put("explanations", c.explanations().stream().map(MeasurementJson::explanation).toList());
    c.tellApart().ifPresent(extra -> json.put("tellApart", extra(extra)));
    c.towardsLimit().ifPresent(limit -> json.put("towardsLimit", towards(limit)));
    return json;
  }

  static Map<String, Object> towards(TowardsLimit limit) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("text", limit.text());
    json.put("limitMs", ms(limit.limitMs()));
    json.put("delayMs", ms(limit.delayMs()));
    json.put("seconds", Numbers.rounded(limit.seconds(), 1));
    return json;
  }

  private static Map<String, Object> extra(ExtraMeasurement extra) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("text", extra.text());
    json.put("blockSize", extra.blockSize().isPresent() ? extra.blockSize().getAsInt() : null);
    if (extra.measuredSamples().isPresent()) {
      json.put("measuredSamples", samples(extra.measuredSamples().getAsDouble()));
    }
    json.put("outcomes", extra.outcomes().stream().map(MeasurementJson::outcome).toList());
    return json;
  }

  private static Map<String, Object> outcome(ExtraMeasurement.Outcome outcome) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("change", outcome.change());
    json.put("predictedSamples", samples(outcome.predictedSamples()));
    return json;
  }

  private static Map<String, Object> explanation(Explanation explanation) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("cause", explanation.cause());
    json.put("text", explanation.text());
    json.put("predictedSamples", samples(explanation.predictedSamples()));
    json.put("residualSamples", samples(explanation.residualSamples()));
    return json;
  }

  private static BigDecimal samples(double samples) {
    return Numbers.rounded(samples, SAMPLE_DECIMALS);
  }

  private static BigDecimal ms(double ms) {
    return Numbers.rounded(ms, MS_DECIMALS);
  }

  private static BigDecimal db(double db) {
    return Numbers.rounded(Numbers.tellableDb(db), DB_DECIMALS);
  }
}
