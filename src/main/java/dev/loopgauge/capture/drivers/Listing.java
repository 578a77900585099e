package dev.loopgauge.capture.drivers;

import java.util.List;
import java.util.Map;

/**
 * The devices of one driver.
 *
 * @param devices those that open
 * @param hidden those that don't, each with the reason
 */
record Listing(List<DriverDevice> devices, Map<String, String> hidden) {}
