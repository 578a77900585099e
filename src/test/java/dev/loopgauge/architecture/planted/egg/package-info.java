/** The other room of a planted knot: {@code KnotsTest} must find it. */
package dev.loopgauge.architecture.planted.egg;
