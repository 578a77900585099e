/**
 * What ALSA says of a device without its converting layer, for the adapters that reach devices
 * through that layer.
 */
package dev.loopgauge.capture.alsa;
