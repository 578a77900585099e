package dev.loopgauge.chain.file;

import dev.loopgauge.chain.Compensation;
import dev.loopgauge.chain.Delay;
import dev.loopgauge.chain.PacketTime;
import dev.loopgauge.chain.Stage;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;

/** Reads the {@code stages} of a chain file. */
final class StageReader implements EntryReader<Stage> {
  private static final List<String> DELAYS =
      List.of("samples", "ms", "blocks", "packets", "metres", "feet", "frames");
  private static final List<String> TOLERANCES = List.of("tolerance-samples", "tolerance-ms");
  private static final String PACKET_TIME = "packet-time-us";
  private static final String HINT = "keep one of them, or make two stages";
  private static final List<String> KEYS = keys();
  private static final Map<String, Compensation> COMPENSATIONS =
      YamlChoice.by(Compensation.values(), Compensation::label);

  private final Collection<String> hosts;

  /** Of stages that may name these computers. */
  StageReader(Collection<String> hosts) {
    this.hosts = hosts;
  }

  private static List<String> keys() {
    List<String> keys = new ArrayList<>(DELAYS);
    keys.add(PACKET_TIME);
    keys.addAll(TOLERANCES);
    keys.addAll(List.of("note", "reported-by", "compensated", "host"));
    return List.copyOf(keys);
  }

  @Override
  public Stage read(String name, YamlValue stage) throws ChainFormatException {
    YamlFields fields = stage.fields("a stage", KEYS);
    return new Stage(
        name,
        delay(fields),
        tolerance(fields),
        fields.text("note"),
        fields.text("reported-by"),
        fields
            .optional("compensated", value -> value.choice("answer", COMPENSATIONS))
            .orElse(Compensation.NO),
        fields.optional("host", value -> value.nameOf("host", hosts)));
  }

  private static Delay delay(YamlFields fields) throws ChainFormatException {
    List<String> stated = fields.among(DELAYS);
    if (stated.isEmpty()) {
      throw fields
          .owner()
          .refuseKey("a delay in the stage", "none", "state one of " + String.join(", ", DELAYS));
    }
    fields.checkSingle(stated, "one delay in the stage", HINT);
    String unit = stated.get(0);
    double number = number(fields, unit);
    YamlValue packetTime = fields.values().get(PACKET_TIME);
    if (packetTime != null && !unit.equals("packets")) {
      throw packetTime.refuseKey(
          "packets beside " + PACKET_TIME, unit, "state the delay as packets");
    }
    return switch (unit) {
      case "samples" -> new Delay.Samples(number);
      case "ms" -> new Delay.Milliseconds(number);
      case "blocks" -> new Delay.Blocks(number);
      case "packets" -> new Delay.Packets(number, packetTime(fields));
      case "metres" -> new Delay.Metres(number);
      case "feet" -> new Delay.Feet(number);
      default -> new Delay.Frames(number);
    };
  }

  private static PacketTime packetTime(YamlFields fields) throws ChainFormatException {
    YamlValue value = fields.required(PACKET_TIME, PACKET_TIME + ": 1000");
    double microseconds = value.number(PACKET_TIME, 0, PacketTime.LONGEST);
    if (microseconds == 0) {
      throw value.refuse("a " + PACKET_TIME + " above 0", "most networks use 1000");
    }
    return new PacketTime(microseconds);
  }

  private static Delay tolerance(YamlFields fields) throws ChainFormatException {
    List<String> stated = fields.among(TOLERANCES);
    if (stated.isEmpty()) {
      return new Delay.Samples(0);
    }
    fields.checkSingle(stated, "one tolerance in the stage", HINT);
    String key = stated.get(0);
    double number = number(fields, key);
    return key.equals("tolerance-ms") ? new Delay.Milliseconds(number) : new Delay.Samples(number);
  }

  private static double number(YamlFields fields, String key) throws ChainFormatException {
    return fields.values().get(key).number(key, 0, Delay.LARGEST);
  }
}
