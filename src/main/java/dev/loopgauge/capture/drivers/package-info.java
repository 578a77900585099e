/**
 * The adapter to the drivers that professionals use (ASIO, JACK, WASAPI, ALSA, PulseAudio,
 * DirectSound), the only place that knows XT-Audio. Its native code wants every call from the
 * thread that called first, so one {@link dev.loopgauge.capture.drivers.DriverThread} lives as long
 * as the program and takes work from a queue; it is loaded by the first piece of work, never
 * before. Where a driver plays and records in one callback the two can't get apart; two devices of
 * a driver are joined by rings, and their offset is another one at each opening. {@link
 * dev.loopgauge.capture.drivers.Drivers} is the seam: all classes whose names begin with {@code Xt}
 * lie behind it, and the rest is tested on a driver in numbers.
 *
 * <p>JACK's library cancels its own threads when a client closes, so a stream is stopped first, and
 * what was just being told gets time to come to its end; of the server's end nothing tells Java, it
 * is asked for.
 */
package dev.loopgauge.capture.drivers;
