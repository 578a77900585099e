/** Planted violations: each rule about the project is tried on one. */
package dev.loopgauge.architecture.planted;
