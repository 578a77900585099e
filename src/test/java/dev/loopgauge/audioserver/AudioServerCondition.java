package dev.loopgauge.audioserver;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import org.junit.jupiter.api.extension.ConditionEvaluationResult;
import org.junit.jupiter.api.extension.ExecutionCondition;
import org.junit.jupiter.api.extension.ExtensionContext;

/** Looks for jackd on the search path. */
final class AudioServerCondition implements ExecutionCondition {
  static final String REQUIRE = "LOOPGAUGE_REQUIRE_AUDIO_SERVER";

  private final Map<String, String> environment;

  /** Looks in this process's environment. */
  AudioServerCondition() {
    this(System.getenv());
  }

  AudioServerCondition(Map<String, String> environment) {
    this.environment = environment;
  }

  @Override
  public ConditionEvaluationResult evaluateExecutionCondition(ExtensionContext context) {
    return evaluate();
  }

  ConditionEvaluationResult evaluate() {
    if (isOnPath("jackd")) {
      return ConditionEvaluationResult.enabled("jackd is installed");
    }
    String missing = "jackd is not installed: apt-get install jackd2";
    if ("1".equals(environment.get(REQUIRE))) {
      throw new IllegalStateException(missing + ", or unset " + REQUIRE);
    }
    return ConditionEvaluationResult.disabled(missing);
  }

  private boolean isOnPath(String program) {
    return Arrays.stream(environment.getOrDefault("PATH", "").split(File.pathSeparator, -1))
        .anyMatch(folder -> Files.isExecutable(Path.of(folder, program)));
  }
}
