/** A planted knot of a sealed type and what it permits: {@code KnotsTest} must find it. */
package dev.loopgauge.architecture.planted.family;
