/**
 * A real audio server for integration tests, on machines without a sound card: {@link
 * dev.loopgauge.audioserver.AudioServer} runs jackd with its dummy driver, {@link
 * dev.loopgauge.audioserver.DelayClient} is a rig of known delay in a process of its own, and
 * {@link dev.loopgauge.audioserver.NeedsAudioServer} says what happens where jackd is missing.
 */
package dev.loopgauge.audioserver;
