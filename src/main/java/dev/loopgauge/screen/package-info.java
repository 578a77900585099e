/** The screen: the rig on a page in any browser. What shows it, what serves it, and until when. */
package dev.loopgauge.screen;
