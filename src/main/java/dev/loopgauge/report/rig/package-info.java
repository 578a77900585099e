/** Documents of the rig at hand: devices, profiles, calibrations, test signals, the demo. */
package dev.loopgauge.report.rig;
