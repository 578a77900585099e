package dev.loopgauge.report.patch;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** What is wrong with a patch sheet itself, before anybody listens. */
final class SheetTroubles {
  private SheetTroubles() {}

  /** In the order of the sheet. */
  static List<TroubleRecord> of(List<SheetRecord> sheet) {
    List<TroubleRecord> troubles = new ArrayList<>();
    List<String> alone =
        sheet.stream().filter(line -> line.reference().isEmpty()).map(SheetRecord::path).toList();
    if (!alone.isEmpty()) {
      troubles.add(
          new TroubleRecord(
              "no reference to measure " + String.join(", ", alone) + " against",
              "add reference: { send: 1, return: 1 } to the chain file, a cable straight back"));
    }
    troubles.addAll(sharedReturns(sheet));
    return troubles;
  }

  private static List<TroubleRecord> sharedReturns(List<SheetRecord> sheet) {
    TreeMap<Integer, TreeSet<String>> returns = new TreeMap<>();
    for (SheetRecord line : sheet) {
      returns.computeIfAbsent(line.ret(), channel -> new TreeSet<>()).add(line.path());
      line.reference()
          .ifPresent(
              pair ->
                  returns
                      .computeIfAbsent(pair.ret(), channel -> new TreeSet<>())
                      .add(of(pair, sheet)));
    }
    return returns.entrySet().stream()
        .filter(entry -> entry.getValue().size() > 1)
        .map(
            entry ->
                new TroubleRecord(
                    "return "
                        + entry.getKey()
                        + " is for more than one: "
                        + entry.getValue().stream().collect(Collectors.joining(", ")),
                    "give each path a return of its own in the chain file"))
        .toList();
  }

  /** A path's own return may be the reference of another path. */
  private static String of(PairRecord reference, List<SheetRecord> sheet) {
    return sheet.stream()
        .filter(line -> line.pair().equals(reference))
        .map(SheetRecord::path)
        .findFirst()
        .orElse("the reference");
  }
}
