package dev.loopgauge.architecture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import dev.loopgauge.report.form.Document;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/**
 * Documents hold decimal numbers only, all the way down. A decimal number is finite, so no document
 * can hold or print one that isn't: making one of a NaN fails where it is made.
 */
class DocumentsTest {
  private static final int FEWEST = 20;
  private static final Pattern CLASS = Pattern.compile("[a-zA-Z_$][\\w$.]*");
  private static final Set<String> BINARY =
      Set.of("double", "float", "java.lang.Double", "java.lang.Float", "java.util.OptionalDouble");

  @Test
  void noDocumentHoldsANumberThatMayNotBeFinite() throws ClassNotFoundException {
    JavaClasses classes =
        new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("dev.loopgauge.report");
    List<Class<?>> documents = new ArrayList<>();
    for (JavaClass each : classes) {
      if (each.isRecord() && each.isAssignableTo(Document.class)) {
        documents.add(each.reflect());
      }
    }
    assertTrue(documents.size() >= FEWEST, documents::toString);
    List<String> found = new ArrayList<>();
    Set<Class<?>> seen = new HashSet<>();
    for (Class<?> document : documents) {
      look(document, seen, found);
    }
    assertEquals(List.of(), found);
  }

  private static void look(Class<?> record, Set<Class<?>> seen, List<String> found)
      throws ClassNotFoundException {
    if (!record.isRecord() || !seen.add(record)) {
      return;
    }
    for (RecordComponent component : record.getRecordComponents()) {
      for (String name : names(component.getGenericType())) {
        if (BINARY.contains(name)) {
          found.add(record.getName() + "." + component.getName() + ": " + name);
        } else if (name.startsWith("dev.loopgauge.report.")) {
          look(Class.forName(name), seen, found);
        }
      }
    }
  }

  private static List<String> names(Type type) {
    Matcher names = CLASS.matcher(type.getTypeName());
    return names.results().map(match -> match.group()).toList();
  }
}
