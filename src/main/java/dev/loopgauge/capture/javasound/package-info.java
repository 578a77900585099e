/**
 * Sound through the operating system's own devices, by {@code javax.sound.sampled}. {@link
 * dev.loopgauge.capture.javasound.JavaSoundBackend} lists the devices and opens a session; {@code
 * Opening} finds a format that both lines take; {@code Duplex} keeps sound flowing both ways on two
 * threads, without a break, from opening to closing, because the offset between playing and
 * recording is the same only that long. Lines are never asked to wait: they are polled and moved
 * only by what fits, since a Java Sound call that waits on a dead audio server waits for ever.
 * Everything that loses a frame ends the session with an exception; there is no silence instead.
 */
package dev.loopgauge.capture.javasound;
