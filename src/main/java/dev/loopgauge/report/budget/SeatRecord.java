package dev.loopgauge.report.budget;

import dev.loopgauge.chain.SeatArrival;
import dev.loopgauge.chain.Standing;
import dev.loopgauge.report.form.Written;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;

/**
 * How late a path is at one position, as documents hold it.
 *
 * @param name the position
 * @param delayMs from the source to there, the air included
 * @param afterFirstMs how much later than the first sound that is heard there
 * @param first that sound: a path, itself too, or direct sound
 * @param standing how its listener stands there
 */
public record SeatRecord(
    String name, BigDecimal delayMs, BigDecimal afterFirstMs, String first, Standing standing) {
  /** Of arrivals. */
  static List<SeatRecord> of(List<SeatArrival> seats) {
    List<SeatRecord> records = new ArrayList<>();
    for (SeatArrival seat : seats) {
      records.add(of(seat));
    }
    return records;
  }

  private static SeatRecord of(SeatArrival seat) {
    return new SeatRecord(
        seat.position(),
        Written.ms(seat.delay().ms()),
        Written.ms(seat.afterFirst().ms()),
        seat.first(),
        seat.standing());
  }
}
