package dev.loopgauge.outside;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.extension.ConditionEvaluationResult;
import org.junit.jupiter.api.extension.ExecutionCondition;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.platform.commons.support.AnnotationSupport;

/** Looks for what {@link NeedsTool} names. */
final class NeedsToolCondition implements ExecutionCondition {
  static final String REQUIRE = "LOOPGAUGE_REQUIRE_TOOLS";

  private final Map<String, String> environment;

  /** Looks in this process's environment. */
  NeedsToolCondition() {
    this(System.getenv());
  }

  NeedsToolCondition(Map<String, String> environment) {
    this.environment = environment;
  }

  @Override
  public ConditionEvaluationResult evaluateExecutionCondition(ExtensionContext context) {
    return AnnotationSupport.findAnnotation(context.getElement(), NeedsTool.class)
        .map(needs -> evaluate(needs.value()))
        .orElse(ConditionEvaluationResult.enabled("nothing is needed"));
  }

  ConditionEvaluationResult evaluate(String... needed) {
    List<String> missing =
        Arrays.stream(needed).filter(name -> !Tool.isThere(name, environment)).toList();
    if (missing.isEmpty()) {
      return ConditionEvaluationResult.enabled("all that is needed is installed");
    }
    String text = "not installed: " + String.join(", ", missing);
    if ("1".equals(environment.get(REQUIRE))) {
      throw new IllegalStateException(text + "; install it, or unset " + REQUIRE);
    }
    return ConditionEvaluationResult.disabled(text);
  }
}
