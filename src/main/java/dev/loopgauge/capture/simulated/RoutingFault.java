package dev.loopgauge.capture.simulated;

/** A fault of the patch bay: a return hears what belongs to another path. */
sealed interface RoutingFault extends Fault permits Swapped, Crosstalk {
  /** The other path, by its name. */
  String other();
}
