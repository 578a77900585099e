package dev.loopgauge.report.measured;

import dev.loopgauge.measure.ChannelPair;
import dev.loopgauge.measure.PatchMap;
import dev.loopgauge.measure.Patching;
import dev.loopgauge.report.form.Document;
import dev.loopgauge.report.form.Numbers;
import dev.loopgauge.report.form.Sheet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Which return hears which send.
 *
 * @param said what shall be patched, where that was said
 * @param map what was heard
 */
public record PatchDocument(Optional<Patching> said, PatchMap map) implements Document {
  private static final int LEVEL_DECIMALS = 1;
  private static final int SAMPLE_DECIMALS = 2;
  private static final int MS_DECIMALS = 3;
  private static final int TEXT_MS_DECIMALS = 2;

  /** Whether all is patched as was said; without that, whether each send is heard. */
  public boolean isGood() {
    return said.isPresent() ? missing().isEmpty() : map.unheardSends().isEmpty();
  }

  private List<ChannelPair> missing() {
    return said.stream()
        .flatMap(
            patching -> Stream.concat(Stream.of(patching.rig()), patching.reference().stream()))
        .filter(pair -> !map.joins(pair))
        .toList();
  }

  @Override
  public String text() {
    Sheet sheet = new Sheet().line(verdict());
    map.sends().forEach(send -> send(sheet, send));
    if (!map.silentReturns().isEmpty()) {
      sheet.row("silent", "return " + list(map.silentReturns()));
    }
    for (int ret : map.crossedReturns()) {
      sheet.row("crossed", "return " + ret + " hears more than one send: is it patched twice?");
    }
    map.incidents().forEach(incident -> sheet.row("lost", incident + "; check again"));
    hint().ifPresent(hint -> sheet.row("try", hint));
    sheet.row("note", "the times include the sound card's own delay");
    return sheet.toString();
  }

  private String verdict() {
    if (said.isEmpty()) {
      return isGood()
          ? "HEARD: each send comes back."
          : "NOT HEARD: send " + list(map.unheardSends()) + ".";
    }
    return isGood()
        ? "PATCHED as asked."
        : "NOT PATCHED as asked: "
            + missing().stream()
                .map(pair -> "return " + pair.ret() + " doesn't hear send " + pair.send())
                .collect(Collectors.joining(", "))
            + ".";
  }

  private void send(Sheet sheet, int send) {
    List<PatchMap.Heard> heard = map.hearing(send);
    if (heard.isEmpty()) {
      sheet.row("send " + send, "not heard");
    }
    for (PatchMap.Heard one : heard) {
      sheet.row(
          "send " + send,
          "return "
              + one.ret()
              + ", "
              + Numbers.plain(one.levelDb(), LEVEL_DECIMALS)
              + " dB, "
              + Numbers.plain(one.delay().ms(), TEXT_MS_DECIMALS)
              + " ms late");
    }
  }

  private Optional<String> hint() {
    if (isGood()) {
      return Optional.empty();
    }
    List<PatchMap.Heard> elsewhere =
        missing().stream().flatMap(pair -> map.hearing(pair.send()).stream()).toList();
    return Optional.of(
        elsewhere.isEmpty()
            ? "is the cable in, the path open, the input gain up?"
            : "move the cable, or name the other return: "
                + elsewhere.stream()
                    .map(one -> "send " + one.send() + " is on return " + one.ret())
                    .collect(Collectors.joining(", ")));
  }

  private static String list(List<Integer> channels) {
    return channels.stream().map(String::valueOf).collect(Collectors.joining(", "));
  }

  @Override
  public Map<String, Object> json() {
    Map<String, Object> json = Document.head("patch", isGood() ? "patched" : "not-patched");
    json.put("sends", map.sends().stream().map(this::json).toList());
    json.put("silentReturns", map.silentReturns());
    json.put("crossedReturns", map.crossedReturns());
    json.put("incidents", map.incidents());
    return json;
  }

  private Map<String, Object> json(int send) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("send", send);
    json.put("heard", map.hearing(send).stream().map(PatchDocument::json).toList());
    return json;
  }

  private static Map<String, Object> json(PatchMap.Heard heard) {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("return", heard.ret());
    json.put("levelDb", Numbers.rounded(heard.levelDb(), LEVEL_DECIMALS));
    json.put("delaySamples", Numbers.rounded(heard.delay().samples(), SAMPLE_DECIMALS));
    json.put("delayMs", Numbers.rounded(heard.delay().ms(), MS_DECIMALS));
    return json;
  }
}
