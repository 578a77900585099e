/**
 * Recordings as WAV files: {@link dev.loopgauge.capture.file.WavFile} reads them block by block,
 * {@link dev.loopgauge.capture.file.WavWriter} writes them whole or not at all. What is not exactly
 * what its header says is refused by an {@link dev.loopgauge.capture.file.AudioFileException} that
 * names the figures and what to try.
 */
package dev.loopgauge.capture.file;
