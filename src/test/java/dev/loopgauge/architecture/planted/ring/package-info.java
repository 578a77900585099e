/** A planted knot within one room: {@code KnotsTest} must find it. */
package dev.loopgauge.architecture.planted.ring;
