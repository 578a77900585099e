/**
 * The port to the sound: play this, record that. An {@link dev.loopgauge.capture.AudioBackend}
 * lists devices and opens an {@link dev.loopgauge.capture.AudioSession}; a session plays a {@link
 * dev.loopgauge.capture.Take} and gives back a {@link dev.loopgauge.capture.Capture}, or says aloud
 * why it can't. The adapters live in packages of their own and know nothing of each other.
 *
 * <p>To fake it in a test, implement {@code AudioSession} by a lambda-sized class that returns the
 * captures it is told to; see {@code ScriptedSession} in the tests.
 */
package dev.loopgauge.capture;
