package dev.loopgauge.chain;

import dev.loopgauge.chain.file.ChainFormatException;
import dev.loopgauge.chain.file.ChainParser;

/** Chain files of invented rigs. */
public final class ChainFiles {
  /** One of everything that a chain file can hold. */
  public static final String THEATRE =
      """
      chain: Harbour Theatre, spring musical
      sample-rate: 48000          # Hz, one word clock
      block-size: 64              # samples
      air-temperature: 20         # degrees C
      stages:
        stage-box-in:  { samples: 12, tolerance-samples: 1, note: converter data sheet }
        console:       { ms: 0.8, tolerance-ms: 0.05 }
        host-blocks:   { blocks: 2 }
        host-fixed:    { samples: 219, tolerance-samples: 2 }
        limiter:       { samples: 240, reported-by: host, compensated: yes }
        network:       { packets: 4, packet-time-us: 1000 }
        stage-box-out: { samples: 11 }
        wedge-throw:   { metres: 1.8 }
        delay-tower:   { feet: 100 }
        camera:        { frames: 2 }
      paths:
        vocal-house:  { listener: house,  stages: [stage-box-in, console, host-blocks, host-fixed, limiter, stage-box-out], direct-metres: 12, returns-to-talker: no }
        vocal-in-ear: { listener: in-ear, stages: [stage-box-in, console, stage-box-out], instrument: voice }
        vocal-wedge:  { listener: wedge,  stages: [stage-box-in, console, network, stage-box-out, wedge-throw] }
        field-tower:  { listener: house,  stages: [console, network, delay-tower], loop: [console], input: lead, direct-feet: 110, returns-to-talker: yes }
        stream-mix:   { listener: stream, stages: [stage-box-in, console, host-blocks, host-fixed], picture: cameras }
      pictures:
        cameras: { frame-rate: 60000/1001, stages: [camera] }
      mixes:
        house-mix: [vocal-house, vocal-in-ear]
      listeners:
        in-ear: { caution-ms: 3, limit-ms: 6 }
      """;

  /** A rig of two computers, with loudspeakers that are heard from several places. */
  public static final String FIELD =
      """
      chain: Harbour Field, harvest concert
      sample-rate: 48000
      block-size: 64
      reference: { send: 1, return: 1 }
      hosts:
        truck: { block-size: 256, sample-rate: 96000 }
      stages:
        box-in:       { samples: 12 }
        desk:         { ms: 0.8 }
        host-blocks:  { blocks: 2 }
        truck-in:     { samples: 96, host: truck, note: "rate converter, counted at its output" }
        truck-blocks: { blocks: 2, host: truck, tolerance-samples: 4 }
        tower-delay:  { ms: 175 }
        box-out:      { samples: 11 }
      groups:
        in: [box-in, desk]
      paths:
        vocal-house:
          listener: house
          input: vocal
          stages: [in, host-blocks, box-out]
          loudspeaker: main-pa
          positions: [row-a, tower]
          patch: { send: 2, return: 2 }
          expect: { polarity: normal, level-db: -6, level-tolerance-db: 1, response-tolerance-db: 3 }
        vocal-tower:
          listener: house
          input: vocal
          stages: [in, tower-delay, box-out]
          loudspeaker: tower-pa
        truck-mix:
          listener: stream
          input: vocal
          stages: [in, truck-in, truck-blocks]
          patch: { send: 3, return: 5, against: 4 }
      positions:
        row-a: { direct-metres: 2,  throw-metres: { main-pa: 12, front-fill: 2.5 } }
        tower: { direct-metres: 70, throw-metres: { main-pa: 68, tower-pa: 8 } }
      """;

  private ChainFiles() {}

  /** That rig. */
  public static Chain field() {
    return parsed(FIELD);
  }

  public static Chain theatre() {
    return parsed(THEATRE);
  }

  /** A rig at 48 kHz and a block of 64, of the given stages and one house path through them all. */
  static Chain rig(String... stages) {
    StringBuilder yaml = new StringBuilder("sample-rate: 48000\nblock-size: 64\nstages:\n");
    StringBuilder names = new StringBuilder();
    for (int i = 0; i < stages.length; i++) {
      yaml.append("  s").append(i).append(": { ").append(stages[i]).append(" }\n");
      names.append(i == 0 ? "s" : ", s").append(i);
    }
    return parsed(yaml + "paths:\n  all: { listener: house, stages: [" + names + "] }\n");
  }

  static PathBudget budget(Chain chain, String path) {
    return ChainBudget.of(chain, chain.path(path));
  }

  public static Chain parsed(String yaml) {
    try {
      return ChainParser.parse(yaml, "rig.yaml");
    } catch (ChainFormatException e) {
      throw new AssertionError(e.getMessage() + " (" + e.hint() + ")", e);
    }
  }
}
