package dev.loopgauge.plan;

import dev.loopgauge.chain.Chain;
import dev.loopgauge.chain.ChainPath;
import dev.loopgauge.chain.Hearing;
import dev.loopgauge.chain.Host;
import dev.loopgauge.chain.Standing;
import dev.loopgauge.signal.Latency;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** The ways in which a path could run at a setting. */
final class Routings {
  private final PlanRequest request;
  private final Chain chain;
  private final Map<String, SourcedDelay> delays = new HashMap<>();
  private final Hearing hearing;

  /** Of the paths of a rig at one setting. */
  Routings(PlanRequest request, Setting setting) {
    this.request = request;
    this.chain = setting.of(request.chain());
    chain.paths().forEach((name, path) -> delays.put(name, request.delays().of(chain, path)));
    Map<String, Latency> heard = new HashMap<>();
    delays.forEach((name, delay) -> heard.put(name, delay.delay()));
    this.hearing = Hearing.of(chain, heard);
  }

  /** The ways of a path: as the chain file has it first, from before the host where it may. */
  List<Feed> of(ChainPath path) {
    Host host = Host.on(chain, path);
    boolean entersHost = !host.inside().isEmpty();
    List<Feed> feeds = new ArrayList<>();
    feeds.add(
        feed(path, entersHost ? Routing.THROUGH_HOST : Routing.NO_HOST, delays.get(path.name())));
    if (entersHost && request.mayLeaveHost().contains(path.name())) {
      feeds.add(feed(path, Routing.BEFORE_HOST, around(host)));
    }
    return feeds;
  }

  /** Whether every listener is still within limits once all paths run in these ways. */
  boolean holdTogether(List<Feed> feeds) {
    Map<String, Latency> chosen = new HashMap<>();
    feeds.forEach(feed -> chosen.put(feed.path(), feed.delay().delay()));
    Hearing together = Hearing.of(chain, chosen);
    return feeds.stream()
        .allMatch(
            feed ->
                feed.limits().standing(together.judged(chain.path(feed.path())).ms())
                    != Standing.OVER);
  }

  private SourcedDelay around(Host host) {
    double samples =
        Stream.concat(host.before().stream(), host.after().stream())
            .mapToDouble(name -> chain.delay(chain.stages().get(name)).samples())
            .sum();
    return new SourcedDelay(new Latency(samples, chain.rate()), DelaySource.PREDICTED);
  }

  private Feed feed(ChainPath path, Routing routing, SourcedDelay delay) {
    return new Feed(
        path.name(),
        routing,
        delay,
        hearing.judged(path, delay.delay()),
        chain.limits().get(path.listener()),
        PictureMatch.of(chain, path, delay.delay(), request.rule()));
  }
}
