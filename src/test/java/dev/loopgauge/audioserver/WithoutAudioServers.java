package dev.loopgauge.audioserver;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.junit.jupiter.api.extension.ExtendWith;

/**
 * These tests keep all processors busy, so that an audio server beside them would lose time: they
 * wait until no other class uses one, and those wait for them.
 */
@Target(ElementType.TYPE)
@Retention(RetentionPolicy.RUNTIME)
@ExtendWith(PlaceForAServer.class)
public @interface WithoutAudioServers {}
