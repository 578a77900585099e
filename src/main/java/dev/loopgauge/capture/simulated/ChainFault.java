package dev.loopgauge.capture.simulated;

import dev.loopgauge.chain.Change;

/**
 * The rig is not the one that the chain file describes.
 *
 * @param change what is different
 */
record ChainFault(Change change) implements Fault {}
