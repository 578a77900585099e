package dev.loopgauge.outside;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** These tests start PostgreSQL where Debian puts it; see {@link NeedsTool} for where it isn't. */
@Target({ElementType.TYPE, ElementType.METHOD})
@Retention(RetentionPolicy.RUNTIME)
@NeedsTool({PostgresServer.VERSIONS, "setpriv"})
public @interface NeedsPostgres {}
