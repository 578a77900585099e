package dev.loopgauge.outside;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.junit.jupiter.api.extension.ExtendWith;

/**
 * These tests need programs or files that others made. Where one is missing they are skipped,
 * unless the environment says {@code LOOPGAUGE_REQUIRE_TOOLS=1}: then they fail.
 */
@Target({ElementType.TYPE, ElementType.METHOD})
@Retention(RetentionPolicy.RUNTIME)
@ExtendWith(NeedsToolCondition.class)
public @interface NeedsTool {
  /** Programs on the search path, or files and folders by their full names. */
  String[] value();
}
