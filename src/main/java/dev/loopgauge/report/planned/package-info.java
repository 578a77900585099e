/** Documents of what to choose: block size and rate, and what to dial in where paths meet. */
package dev.loopgauge.report.planned;
