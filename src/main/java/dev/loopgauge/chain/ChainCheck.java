package dev.loopgauge.chain;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;

/** Looks for what is wrong or missing in a valid chain file, without predicting anything. */
public final class ChainCheck {
  private final Chain chain;
  private final List<CheckFinding> findings = new ArrayList<>();

  private ChainCheck(Chain chain) {
    this.chain = chain;
  }

  /** What is wrong, then what is missing; empty where the file says all that can be used. */
  public static List<CheckFinding> of(Chain chain) {
    ChainCheck check = new ChainCheck(chain);
    chain.notices().forEach(n -> check.findings.add(CheckFinding.wrong(n.text(), n.hint())));
    check.patches();
    check.reporters();
    check.unused();
    check.directSound();
    check.unpatched();
    check.tolerances();
    check.compensation();
    return check.findings.stream()
        .sorted((one, other) -> one.kind().compareTo(other.kind()))
        .toList();
  }

  private void patches() {
    TreeMap<Integer, List<String>> returns = new TreeMap<>();
    for (ChainPath path : chain.paths().values()) {
      path.patch().ifPresent(patch -> patch(path, patch));
      path.patch()
          .ifPresent(
              patch ->
                  returns
                      .computeIfAbsent(patch.returned(), channel -> new ArrayList<>())
                      .add(path.name()));
    }
    returns.forEach(
        (channel, paths) -> {
          if (paths.size() > 1) {
            wrong(
                String.format(
                    Locale.ROOT, "%s are all on return %d.", String.join(", ", paths), channel),
                "give each path a return of its own");
          }
        });
  }

  private void patch(ChainPath path, Patch patch) {
    OptionalInt against =
        patch.against().isPresent()
            ? patch.against()
            : chain.reference().map(r -> OptionalInt.of(r.returned())).orElse(OptionalInt.empty());
    if (against.isEmpty()) {
      missing(
          String.format(
              Locale.ROOT, "%s has a patch but no reference to be measured against.", path.name()),
          "add reference: { send: 1, return: 1 }, a cable straight back");
    } else if (against.getAsInt() == patch.returned()) {
      wrong(
          String.format(
              Locale.ROOT,
              "%s is on return %d, which is its reference.",
              path.name(),
              patch.returned()),
          "give the path a return of its own");
    }
  }

  private void reporters() {
    for (Stage stage : chain.stages().values()) {
      Optional<String> by = stage.reportedBy().filter(name -> !isHost(name));
      by.ifPresent(
          name ->
              wrong(
                  String.format(
                      Locale.ROOT,
                      "'%s' is reported by %s, which is no host of the file.",
                      stage.name(),
                      Shown.quoted(name)),
                  chain.hosts().isEmpty()
                      ? "write reported-by: host"
                      : "write host, or one of " + String.join(", ", chain.hosts().keySet())));
    }
  }

  private boolean isHost(String name) {
    return name.toLowerCase(Locale.ROOT).endsWith("host") || chain.hosts().containsKey(name);
  }

  private void unused() {
    Set<String> passed = new HashSet<>();
    Set<String> seats = new HashSet<>();
    Set<String> pictures = new HashSet<>();
    for (ChainPath path : chain.paths().values()) {
      passed.addAll(path.stages());
      path.picture().ifPresent(pictures::add);
      path.loudspeaker().ifPresent(speaker -> seats.addAll(speaker.positions()));
    }
    chain.pictures().values().forEach(picture -> passed.addAll(picture.stages()));
    Set<String> hosts = new HashSet<>();
    chain.stages().values().forEach(stage -> stage.host().ifPresent(hosts::add));
    unused("stage", chain.stages().keySet(), passed, "list it in a path");
    unused("host", chain.hosts().keySet(), hosts, "name it in a stage");
    unused("position", chain.positions().keySet(), seats, "list it in a path");
    unused("picture", chain.pictures().keySet(), pictures, "name it in a path");
  }

  private void unused(String what, Collection<String> all, Set<String> used, String hint) {
    all.stream()
        .filter(name -> !used.contains(name))
        .forEach(
            name ->
                wrong(
                    String.format(Locale.ROOT, "The %s '%s' is never used.", what, name),
                    hint + ", or take it out"));
  }

  private void directSound() {
    for (ChainPath path : chain.paths().values()) {
      if (path.listener() == Listener.HOUSE && path.direct().isEmpty()) {
        List<String> without = seatsWithoutDirectSound(path);
        if (path.loudspeaker().isEmpty()) {
          missing(
              path.name() + " is a house path without its direct sound.",
              "add direct-metres, or a loudspeaker and positions");
        } else if (!without.isEmpty()) {
          missing(
              String.format(
                  Locale.ROOT,
                  "%s is heard without direct sound at %s.",
                  path.name(),
                  String.join(", ", without)),
              "add direct-metres to the position");
        }
      }
    }
  }

  private List<String> seatsWithoutDirectSound(ChainPath path) {
    return path.loudspeaker().map(Loudspeaker::positions).orElse(List.of()).stream()
        .filter(seat -> chain.positions().get(seat).directMetres().isEmpty())
        .toList();
  }

  private void unpatched() {
    for (ChainPath path : chain.paths().values()) {
      if (path.patch().isEmpty()) {
        missing(
            path.name() + " has no patch: a round leaves it out.",
            "add patch: { send: 2, return: 2 }");
      }
    }
  }

  private void tolerances() {
    for (ChainPath path : chain.paths().values()) {
      if (path.stages().stream()
          .map(chain.stages()::get)
          .allMatch(stage -> chain.toleranceSamples(stage) == 0)) {
        missing(
            path.name() + " states no tolerance.",
            "add tolerance-samples or tolerance-ms to the stages that aren't exact");
      }
    }
  }

  private void compensation() {
    for (Stage stage : chain.stages().values()) {
      if (stage.compensated() == Compensation.UNKNOWN) {
        missing(
            String.format(
                Locale.ROOT, "Does the desk compensate '%s'? The file says unknown.", stage.name()),
            "measure with the stage active and bypassed, then write yes or no");
      }
    }
  }

  private void wrong(String text, String hint) {
    findings.add(CheckFinding.wrong(text, hint));
  }

  private void missing(String text, String hint) {
    findings.add(CheckFinding.missing(text, hint));
  }
}
