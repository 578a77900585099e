/**
 * The adapter to the JACK audio server, the only place that knows JNAJack's binding. It opens two
 * clients of the server, one that plays and one that records, and counts both by the server's own
 * frame clock: so a rig between the two is as late as it is, without the block that a single
 * client's loop would add. A {@link dev.loopgauge.capture.jack.CallbackTake} is the one thing that
 * the server's threads and the measuring thread share; whatever a server can do to a take besides
 * (dropouts, a changed block, its own end) is seen by {@link
 * dev.loopgauge.capture.jack.ServerWatch}. Calls that a stuck server would never answer go through
 * {@link dev.loopgauge.capture.TimedCall}. The library cancels its threads without asking what they
 * are at: only the two that carry blocks enter Java, and they end by themselves; the others leave a
 * {@link dev.loopgauge.capture.jack.ServerNotice}.
 */
package dev.loopgauge.capture.jack;
