/**
 * What is kept between shows: profiles of a patching and calibrations with a patch cable, as plain
 * YAML files in the user's data folder that can be read, edited and copied to another laptop. Files
 * are replaced whole or not at all.
 */
package dev.loopgauge.setup;
