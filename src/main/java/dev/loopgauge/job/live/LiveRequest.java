package dev.loopgauge.job.live;

import dev.loopgauge.estimate.ArrivalChoice;
import dev.loopgauge.job.BudgetChoice;
import dev.loopgauge.job.HostReport;
import dev.loopgauge.job.kept.KeepChoice;

/**
 * What every job takes that measures one path.
 *
 * @param live what to play and record, and where
 * @param budget what to compare with
 * @param reported what the host shows
 * @param rig what is wrong with the built-in rig
 * @param arrival which arrival is measured where there are several
 * @param keep whether to keep the result
 * @param agreed whether somebody agreed beforehand that sound is played
 */
public record LiveRequest(
    LiveChoice live,
    BudgetChoice budget,
    HostReport reported,
    RigChoice rig,
    ArrivalChoice arrival,
    KeepChoice keep,
    boolean agreed) {}
