/**
 * Whether sound came back as it was sent: stretches that are missing, runs of zeros, flat tops,
 * splices, and a level that moves.
 */
package dev.loopgauge.estimate.integrity;
