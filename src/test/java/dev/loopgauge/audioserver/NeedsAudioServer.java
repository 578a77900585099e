package dev.loopgauge.audioserver;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.junit.jupiter.api.extension.ExtendWith;

/**
 * These tests start jackd, few classes at a time on one machine. Where it isn't installed they are
 * skipped, unless the environment says {@code LOOPGAUGE_REQUIRE_AUDIO_SERVER=1}: then they fail.
 */
@Target(ElementType.TYPE)
@Retention(RetentionPolicy.RUNTIME)
@ExtendWith({AudioServerCondition.class, PlaceForAServer.class})
public @interface NeedsAudioServer {}
