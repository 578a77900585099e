/** Holds the layers that DEVELOPERS.md draws. */
package dev.loopgauge.architecture;
