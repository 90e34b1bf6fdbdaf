package org.broodbench.controller;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import java.io.IOException;
import java.io.InputStream;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** The core uses no clock, no I/O, no random numbers, no threads and no floating point. */
class ArchitectureTest {
  /** What runs after construction: everything but settings and their messages. */
  private static final Set<String> AT_CONSTRUCTION_ONLY =
      Set.of(
          "Setting",
          "Settings",
          "SettingsCheck",
          "SettingProblem",
          "IllegalSettings",
          "Defaults",
          "ProbePlace",
          "Chemistry",
          "package-info");

  private static final Set<String> ALLOWED_IN_STEP =
      Set.of(
          "java.lang.Object",
          "java.lang.Integer",
          "java.lang.String",
          "java.lang.Override",
          "java.lang.invoke.StringConcatFactory",
          "java.lang.invoke.MethodHandles",
          "java.lang.invoke.MethodHandles$Lookup",
          "java.lang.IllegalArgumentException",
          "java.util.List");

  private static final Set<String> ALLOWED_AT_CONSTRUCTION =
      Set.of("java.lang", "java.lang.invoke", "java.lang.runtime", "java.util");

  private static JavaClasses core() {
    return new ClassFileImporter()
        .withImportOption(new ImportOption.DoNotIncludeTests())
        .importPackages("org.broodbench.controller");
  }

  private static final ArchRule STEP_RULE =
      classes()
          .that(
              DescribedPredicate.describe(
                  "run in a step", c -> !AT_CONSTRUCTION_ONLY.contains(c.getSimpleName())))
          .should(
              only(
                  "use nothing but the core and a few classes of java.lang",
                  target ->
                      target.getPackageName().equals("org.broodbench.controller")
                          || ALLOWED_IN_STEP.contains(target.getBaseComponentType().getName())
                          || isWholeNumber(target)));

  private static final ArchRule CONSTRUCTION_RULE =
      classes()
          .should(
              only(
                  "use nothing but java.lang and java.util",
                  target ->
                      target.getPackageName().equals("org.broodbench.controller")
                          || (ALLOWED_AT_CONSTRUCTION.contains(target.getPackageName())
                              && !Set.of("System", "Thread", "Runtime", "Process", "Random", "Date")
                                  .contains(target.getSimpleName()))
                          || isWholeNumber(target)));

  private static boolean isWholeNumber(JavaClass target) {
    return Set.of("int", "boolean", "void", "long", "byte", "char", "short")
        .contains(target.getBaseComponentType().getName());
  }

  private static ArchCondition<JavaClass> only(
      String text, java.util.function.Predicate<JavaClass> allowed) {
    return new ArchCondition<>(text) {
      @Override
      public void check(JavaClass item, ConditionEvents events) {
        item.getDirectDependenciesFromSelf()
            .forEach(
                dependency -> {
                  if (!allowed.test(dependency.getTargetClass())) {
                    events.add(
                        SimpleConditionEvent.violated(dependency, dependency.getDescription()));
                  }
                });
      }
    };
  }

  @Test
  void stepUsesWholeNumbersAndTheCoreAlone() {
    STEP_RULE.check(core());
  }

  @Test
  void constructionUsesLangAndUtilAlone() {
    CONSTRUCTION_RULE.check(core());
  }

  @Test
  void thereIsNoStaticMutableState() {
    for (JavaClass type : core()) {
      type.getFields()
          .forEach(
              field ->
                  assertTrue(
                      !field.getModifiers().contains(JavaModifier.STATIC)
                          || field.getModifiers().contains(JavaModifier.FINAL),
                      field.getFullName()));
    }
  }

  /**
   * Floating-point work on locals shows in no signature, so the instructions themselves are read.
   */
  @Test
  void noFloatingPointInstruction() throws IOException {
    for (JavaClass type : core()) {
      assertFalse(FloatingPoint.usedBy(bytes(type.getName())), type.getName());
    }
  }

  /** The rules are not asleep: a class with every sin breaks each of them. */
  @Test
  void plantedFaultsAreFound() throws IOException {
    JavaClasses planted = new ClassFileImporter().importClasses(Planted.class);
    String step = STEP_RULE.evaluate(planted).getFailureReport().toString();
    for (String sin : new String[] {"nanoTime", "Random", "Thread", "FileInputStream"}) {
      assertTrue(step.contains(sin), sin + " was not found in " + step);
    }
    String construction = CONSTRUCTION_RULE.evaluate(planted).getFailureReport().toString();
    assertTrue(construction.contains("nanoTime"), construction);
    assertTrue(FloatingPoint.usedBy(bytes(PlantedFloat.class.getName())));
  }

  private static byte[] bytes(String name) throws IOException {
    try (InputStream in =
        ArchitectureTest.class.getResourceAsStream("/" + name.replace('.', '/') + ".class")) {
      return in.readAllBytes();
    }
  }

  /** Sins that the rules have to find. */
  static final class Planted {
    long clock() {
      return System.nanoTime();
    }

    int random() {
      return new java.util.Random(1).nextInt();
    }

    Object thread() {
      return Thread.currentThread();
    }

    Object file() throws IOException {
      return new java.io.FileInputStream("x");
    }
  }

  /** A floating-point sum that no signature shows. */
  static final class PlantedFloat {
    int hidden(int x) {
      return (int) (x * 1.5);
    }
  }
}
