/**
 * What goes into an estimate: a reading is one look at a path, reference and return from one
 * instant on. Windows on long recordings, how loud a part is and where the loudest lies, sound
 * played a little faster or slower, and work on several pieces at once.
 */
package dev.loopgauge.estimate.reading;
