package dev.loopgauge.estimate.detection;

import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.loopgauge.estimate.result.Finding;
import dev.loopgauge.signal.SampleRate;
import org.junit.jupiter.api.Test;

class DetectionFindingsTest {
  private static final SampleRate RATE = new SampleRate(48_000);

  @Test
  void asksForNoLongerSearchThanThereIs() {
    Finding finding = DetectionFindings.beyondWindow(59.9 * 48_000, 1, RATE);
    assertTrue(finding.hint().contains("--max-delay 60.0"), finding::hint);
    assertTrue(DetectionFindings.beyondWindow(-96_000, 1, RATE).hint().contains("--max-delay 2.5"));
  }
}
