/** Groups of options that several commands take, each read into the record that a job takes. */
package dev.loopgauge.cli.option;
