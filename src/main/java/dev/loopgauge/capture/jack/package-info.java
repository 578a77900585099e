/**
 * The adapter to the JACK audio server, the only place that knows JNAJack. It opens two clients of
 * the server, one that plays and one that records, and counts both by the server's own frame clock:
 * so a rig between the two is as late as it is, without the block that a single client's loop would
 * add. A {@link dev.loopgauge.capture.jack.RunningTake} is the one thing that the server's threads
 * and the measuring thread share; whatever a server can do to a take besides (dropouts, a changed
 * block, its own end) arrives at {@link dev.loopgauge.capture.jack.ServerWatch}. Calls that a stuck
 * server would never answer go through {@link dev.loopgauge.capture.jack.TimedCall}.
 */
package dev.loopgauge.capture.jack;
