/** The main job in the built-in rig. */
package dev.loopgauge.cli.demo;
