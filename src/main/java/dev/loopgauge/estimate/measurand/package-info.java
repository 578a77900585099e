/**
 * What the delay of a path means, whatever the stimulus was: when its own response is strongest,
 * and the pure delay that no filter explains, each with what its definition leaves open. A path is
 * read as a response in bands of a twelfth of an octave; one that is flat keeps the correlation's
 * peak.
 */
package dev.loopgauge.estimate.measurand;
