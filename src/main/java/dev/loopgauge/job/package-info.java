/**
 * What the program does, from an options record to a document: no argument vector, no screen, no
 * exit code. Ports say what a job asks of the person and of the machine.
 */
package dev.loopgauge.job;
