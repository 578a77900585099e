package dev.loopgauge.report.measured;

import dev.loopgauge.measure.ChannelPair;
import dev.loopgauge.measure.PatchMap;
import dev.loopgauge.measure.Patching;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Sheet;
import dev.loopgauge.report.form.Sparse;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Which return hears which send.
 *
 * @param outcome {@code patched} or {@code not-patched}
 * @param asked what shall be patched, where that was said
 * @param sends each send and where it is heard
 */
public record PatchDocument(
    String command,
    String outcome,
    List<PairRecord> asked,
    List<SendRecord> sends,
    List<Integer> silentReturns,
    List<Integer> crossedReturns,
    List<String> incidents)
    implements Document, Sparse {
  private static final String PATCHED = "patched";
  private static final int LEVEL_DECIMALS = 1;
  private static final int SAMPLE_DECIMALS = 2;
  private static final int MS_DECIMALS = 3;
  private static final int TEXT_MS_DECIMALS = 2;

  /** A send and the return that shall hear it. */
  public record PairRecord(int send, int ret) {}

  /** A send and where it is heard. */
  public record SendRecord(int send, List<HeardRecord> heard) {}

  /** A return that hears a send. */
  public record HeardRecord(
      int ret,
      Optional<BigDecimal> levelDb,
      Optional<BigDecimal> delaySamples,
      Optional<BigDecimal> delayMs) {
    private static HeardRecord of(PatchMap.Heard heard) {
      return new HeardRecord(
          heard.ret(),
          Optional.of(Numbers.rounded(heard.levelDb(), LEVEL_DECIMALS)),
          Optional.of(Numbers.rounded(heard.delay().samples(), SAMPLE_DECIMALS)),
          Optional.of(Numbers.rounded(heard.delay().ms(), MS_DECIMALS)));
    }
  }

  /**
   * The document of a check.
   *
   * @param said what shall be patched, where that was said
   * @param map what was heard
   */
  public static PatchDocument of(Optional<Patching> said, PatchMap map) {
    List<ChannelPair> asked =
        said.stream()
            .flatMap(one -> Stream.concat(Stream.of(one.rig()), one.reference().stream()))
            .toList();
    boolean good =
        said.isPresent() ? asked.stream().allMatch(map::joins) : map.unheardSends().isEmpty();
    return new PatchDocument(
        "patch",
        good ? PATCHED : "not-patched",
        asked.stream().map(pair -> new PairRecord(pair.send(), pair.ret())).toList(),
        map.sends().stream().map(send -> send(map, send)).toList(),
        map.silentReturns(),
        map.crossedReturns(),
        map.incidents());
  }

  private static SendRecord send(PatchMap map, int send) {
    return new SendRecord(send, map.hearing(send).stream().map(HeardRecord::of).toList());
  }

  @Override
  public Set<String> leftOut() {
    return Set.of("asked");
  }

  /** Whether all is patched as was said; without that, whether each send is heard. */
  public boolean isGood() {
    return outcome.equals(PATCHED);
  }

  private List<HeardRecord> hearing(int send) {
    return sends.stream()
        .filter(one -> one.send() == send)
        .flatMap(one -> one.heard().stream())
        .toList();
  }

  private List<PairRecord> missing() {
    return asked.stream()
        .filter(pair -> hearing(pair.send()).stream().noneMatch(one -> one.ret() == pair.ret()))
        .toList();
  }

  @Override
  public String text() {
    Sheet sheet = new Sheet().line(verdict());
    sends.forEach(send -> tell(sheet, send));
    if (!silentReturns.isEmpty()) {
      sheet.row("silent", "return " + list(silentReturns));
    }
    for (int ret : crossedReturns) {
      sheet.row("crossed", "return " + ret + " hears more than one send: is it patched twice?");
    }
    incidents.forEach(incident -> sheet.row("lost", incident + "; check again"));
    if (!isGood()) {
      sheet.row("try", hint());
    }
    sheet.row("note", "the times include the sound card's own delay");
    return sheet.toString();
  }

  private String verdict() {
    if (asked.isEmpty() && (isGood() || !unheard().isEmpty())) {
      return isGood() ? "HEARD: each send comes back." : "NOT HEARD: send " + unheard() + ".";
    }
    return isGood()
        ? "PATCHED as asked."
        : "NOT PATCHED as asked: "
            + missing().stream()
                .map(pair -> "return " + pair.ret() + " doesn't hear send " + pair.send())
                .collect(Collectors.joining(", "))
            + ".";
  }

  private String unheard() {
    return list(sends.stream().filter(s -> s.heard().isEmpty()).map(SendRecord::send).toList());
  }

  private static void tell(Sheet sheet, SendRecord send) {
    String label = "send " + send.send();
    if (send.heard().isEmpty()) {
      sheet.row(label, "not heard");
    }
    for (HeardRecord one : send.heard()) {
      String level = plain(one.levelDb(), LEVEL_DECIMALS);
      String late = plain(one.delayMs(), TEXT_MS_DECIMALS);
      sheet.row(label, "return " + one.ret() + ", " + level + " dB, " + late + " ms late");
    }
  }

  private static String plain(Optional<BigDecimal> number, int decimals) {
    return number.map(known -> Numbers.plain(known.doubleValue(), decimals)).orElse("?");
  }

  private String hint() {
    String elsewhere =
        missing().stream()
            .flatMap(pair -> hearing(pair.send()).stream().map(one -> elsewhere(pair, one)))
            .collect(Collectors.joining(", "));
    return elsewhere.isEmpty()
        ? "is the cable in, the path open, the input gain up?"
        : "move the cable, or name the other return: " + elsewhere;
  }

  private static String elsewhere(PairRecord pair, HeardRecord heard) {
    return "send " + pair.send() + " is on return " + heard.ret();
  }

  private static String list(List<Integer> channels) {
    return channels.stream().map(String::valueOf).collect(Collectors.joining(", "));
  }
}
