package org.broodbench;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaCodeUnitAccess;
import com.tngtech.archunit.core.domain.JavaField;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * Which package may use which, which libraries it may use, and what nobody may do. A package, an
 * arrow or a library that is not in the table fails, and so does an entry that nobody needs any
 * more.
 */
class ArchitectureTest {
  private static final String ROOT = "org.broodbench.";

  /** The command line may use everything. */
  private static final String ANY = "any";

  /** Package to the packages of the project that it may use; {@code controller} is the core. */
  private static final Map<String, Set<String>> ARROWS =
      Map.ofEntries(
          Map.entry("matter", Set.of()),
          Map.entry("sky", Set.of("matter")),
          Map.entry("colony", Set.of("matter")),
          Map.entry("hive", Set.of("colony", "matter")),
          Map.entry("power", Set.of("matter")),
          Map.entry("rig", Set.of("sky", "colony", "hive", "power", "controller")),
          Map.entry("plant", Set.of("rig", "sky", "hive", "power", "matter")),
          Map.entry(
              "loop",
              Set.of("plant", "rig", "sky", "colony", "hive", "power", "matter", "controller")),
          Map.entry(
              "study",
              Set.of("loop", "rig", "sky", "colony", "hive", "power", "matter", "controller")),
          Map.entry("size", Set.of("study", "loop", "rig", "sky", "power")),
          Map.entry("card", Set.of("study", "loop", "rig", "sky", "colony", "power", "controller")),
          Map.entry(
              "stress",
              Set.of(
                  "study", "loop", "plant", "rig", "sky", "colony", "hive", "power", "controller")),
          Map.entry("audit", Set.of("rig", "sky", "colony", "hive", "power", "controller")),
          Map.entry("tune", Set.of("study", "loop", "rig", "sky", "power", "controller")),
          Map.entry(
              "recipe",
              Set.of("input", "stress", "tune", "size", "study", "plant", "rig", "sky", "colony")),
          Map.entry("members", Set.of("recipe", "input", "study", "controller")),
          Map.entry("firmware", Set.of("loop", "rig", "sky", "controller")),
          Map.entry(
              "calibrate",
              Set.of(
                  "firmware",
                  "loop",
                  "plant",
                  "rig",
                  "sky",
                  "colony",
                  "hive",
                  "power",
                  "matter",
                  "controller")),
          Map.entry(
              "input",
              Set.of(
                  "matter",
                  "sky",
                  "colony",
                  "hive",
                  "power",
                  "rig",
                  "controller",
                  "firmware",
                  "calibrate",
                  "audit")),
          Map.entry(
              "output",
              Set.of(
                  "card",
                  "size",
                  "study",
                  "stress",
                  "tune",
                  "loop",
                  "rig",
                  "sky",
                  "colony",
                  "hive",
                  "power",
                  "controller",
                  "firmware",
                  "calibrate",
                  "audit")),
          Map.entry(
              "serve",
              Set.of(
                  "input",
                  "output",
                  "study",
                  "loop",
                  "plant",
                  "rig",
                  "sky",
                  "power",
                  "matter",
                  "controller")),
          Map.entry("cli", Set.of(ANY)));

  /** First parts of the names of library packages to the packages of the project that use them. */
  private static final Map<String, Set<String>> LIBRARIES =
      Map.ofEntries(
          Map.entry("net.e175.klaus.solarpositioning", Set.of("sky")),
          Map.entry("org.tomlj", Set.of("input")),
          Map.entry("de.siegmar.fastcsv", Set.of("input", "output")),
          Map.entry("com.fasterxml.jackson.core", Set.of("input", "output")),
          Map.entry("com.fazecast.jSerialComm", Set.of("firmware")),
          Map.entry("com.hazelcast", Set.of("members")),
          Map.entry("javax.crypto", Set.of("members")),
          Map.entry("com.openhtmltopdf", Set.of("output")),
          Map.entry("org.hipparchus", Set.of("calibrate", "tune")),
          Map.entry("com.sun.net.httpserver", Set.of("serve")),
          Map.entry("picocli", Set.of("cli")));

  /** Exact or whole-number functions; everything else of {@link Math} may differ by machine. */
  private static final Set<String> EXACT_MATH =
      Set.of(
          "sqrt",
          "abs",
          "min",
          "max",
          "rint",
          "round",
          "floor",
          "ceil",
          "floorDiv",
          "floorMod",
          "addExact",
          "subtractExact",
          "multiplyExact",
          "toIntExact");

  /** What reads a clock or an unseeded source of chance. */
  private static final Set<String> FORBIDDEN_CALLS =
      Set.of(
          "java.lang.System.currentTimeMillis",
          "java.lang.System.nanoTime",
          "java.time.Instant.now",
          "java.time.LocalDate.now",
          "java.time.LocalDateTime.now",
          "java.time.LocalTime.now",
          "java.time.OffsetDateTime.now",
          "java.time.ZonedDateTime.now",
          "java.time.Year.now",
          "java.time.Clock.systemUTC",
          "java.time.Clock.systemDefaultZone",
          "java.lang.Math.random",
          "java.lang.StrictMath.random",
          "java.util.UUID.randomUUID",
          "java.security.SecureRandom.<init>",
          "java.util.concurrent.ThreadLocalRandom.current");

  /** Classes that may: what they show or decide is no result. */
  private static final Map<String, String> MAY_CALL =
      Map.of(
          "org.broodbench.cli.ProgressLine", "java.lang.System.nanoTime",
          "org.broodbench.members.Secret", "java.security.SecureRandom.<init>",
          "org.broodbench.serve.Pacer", "java.lang.System.nanoTime",
          "org.broodbench.serve.Secret", "java.security.SecureRandom.<init>");

  private static JavaClasses classes;

  @BeforeAll
  static void read() {
    classes =
        new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("org.broodbench");
  }

  /** The package below the root; packages inside it count as part of it. */
  private static String home(JavaClass c) {
    String name = c.getPackageName();
    return name.startsWith(ROOT) ? name.substring(ROOT.length()).split("\\.")[0] : name;
  }

  private static boolean ours(JavaClass c) {
    return c.getPackageName().startsWith(ROOT);
  }

  private static boolean simulator(JavaClass c) {
    return ours(c) && !home(c).equals("controller");
  }

  @Test
  void packagesUseWhatTheTableAllows() {
    Map<String, Set<String>> found = new TreeMap<>();
    Map<String, String> example = new TreeMap<>();
    for (JavaClass c : classes) {
      if (!simulator(c)) {
        continue;
      }
      found.computeIfAbsent(home(c), k -> new TreeSet<>());
      for (Dependency d : c.getDirectDependenciesFromSelf()) {
        JavaClass target = d.getTargetClass().getBaseComponentType();
        if (ours(target) && !home(target).equals(home(c))) {
          found.get(home(c)).add(home(target));
          example.putIfAbsent(home(c) + " -> " + home(target), d.getDescription());
        }
      }
    }
    Set<String> faults = new TreeSet<>();
    for (Map.Entry<String, Set<String>> e : found.entrySet()) {
      Set<String> allowed = ARROWS.get(e.getKey());
      if (allowed == null) {
        faults.add("package " + e.getKey() + " is not in the table");
        continue;
      }
      if (allowed.contains(ANY)) {
        continue;
      }
      for (String to : e.getValue()) {
        if (!allowed.contains(to)) {
          String arrow = e.getKey() + " -> " + to;
          faults.add("not allowed: " + arrow + ": " + example.get(arrow));
        }
      }
    }
    ARROWS.forEach(
        (from, targets) -> {
          if (!found.containsKey(from)) {
            faults.add("package " + from + " is in the table but empty");
          } else {
            for (String to : targets) {
              if (!to.equals(ANY) && !found.get(from).contains(to)) {
                faults.add("nobody needs any more: " + from + " -> " + to);
              }
            }
          }
        });
    assertEquals("", String.join("\n", faults));
  }

  @Test
  void librariesStayWhereTheyBelong() {
    Set<String> faults = new TreeSet<>();
    Map<String, Set<String>> used = new TreeMap<>();
    for (JavaClass c : classes) {
      for (Dependency d : c.getDirectDependenciesFromSelf()) {
        JavaClass target = d.getTargetClass().getBaseComponentType();
        String name = target.getName();
        if (target.isPrimitive() || name.startsWith("java.") || name.startsWith(ROOT)) {
          continue;
        }
        String library =
            LIBRARIES.keySet().stream()
                .filter(l -> name.startsWith(l + "."))
                .findFirst()
                .orElse("");
        if (library.isEmpty() || !LIBRARIES.get(library).contains(home(c))) {
          faults.add(home(c) + " uses " + name);
        } else {
          used.computeIfAbsent(library, k -> new TreeSet<>()).add(home(c));
        }
      }
    }
    LIBRARIES.forEach(
        (library, users) -> {
          for (String user : users) {
            if (!used.getOrDefault(library, Set.of()).contains(user)) {
              faults.add("nobody needs any more: " + library + " in " + user);
            }
          }
        });
    assertEquals("", String.join("\n", faults));
  }

  @Test
  void equalInputsGiveEqualResultsEverywhere() {
    Set<String> faults = new TreeSet<>();
    for (JavaClass c : classes) {
      for (JavaCodeUnitAccess<?> a : c.getCodeUnitAccessesFromSelf()) {
        String owner = a.getTargetOwner().getName();
        String call = owner + "." + a.getName();
        boolean clock = FORBIDDEN_CALLS.contains(call) && !call.equals(MAY_CALL.get(c.getName()));
        boolean unseeded =
            call.equals("java.util.Random.<init>")
                && a.getTarget().getRawParameterTypes().isEmpty();
        boolean inexact = owner.equals("java.lang.Math") && !EXACT_MATH.contains(a.getName());
        if (clock || unseeded || inexact) {
          faults.add(a.getDescription());
        }
      }
    }
    assertEquals("", String.join("\n", faults));
  }

  /** Constants may be arrays that no other class can reach; everything else is immutable. */
  @Test
  void nothingStaticChanges() {
    List<Class<?>> changing =
        List.of(
            StringBuilder.class,
            java.util.Random.class,
            java.util.concurrent.atomic.AtomicInteger.class,
            java.util.concurrent.atomic.AtomicLong.class,
            java.util.concurrent.atomic.AtomicBoolean.class,
            java.util.concurrent.atomic.AtomicReference.class,
            java.util.AbstractCollection.class,
            java.util.AbstractMap.class,
            ThreadLocal.class);
    Set<String> faults = new TreeSet<>();
    for (JavaClass c : classes) {
      for (JavaField f : c.getFields()) {
        boolean synthetic = f.getModifiers().contains(JavaModifier.SYNTHETIC);
        if (!f.getModifiers().contains(JavaModifier.STATIC) || synthetic) {
          continue;
        }
        boolean isPrivate = f.getModifiers().contains(JavaModifier.PRIVATE);
        if (!f.getModifiers().contains(JavaModifier.FINAL)
            || (f.getRawType().isArray() && !isPrivate)
            || changing.stream().anyMatch(t -> f.getRawType().isAssignableTo(t))) {
          faults.add(f.getFullName());
        }
      }
    }
    assertEquals("", String.join("\n", faults));
  }

  @Test
  void onlyTheCommandLinePrints() {
    Set<String> faults = new TreeSet<>();
    for (JavaClass c : classes) {
      if (home(c).equals("cli")) {
        continue;
      }
      c.getFieldAccessesFromSelf().stream()
          .filter(a -> a.getTargetOwner().isEquivalentTo(System.class))
          .forEach(a -> faults.add(a.getDescription()));
    }
    assertEquals("", String.join("\n", faults));
  }

  /** Numbers of a Turkish, a German and an Arabic machine are the same letters. */
  @Test
  void nobodyFollowsTheLanguageOfTheMachine() {
    Set<String> followers =
        Set.of(
            "java.lang.String.format(java.lang.String, [Ljava.lang.Object;)",
            "java.lang.String.formatted([Ljava.lang.Object;)",
            "java.lang.String.toLowerCase()",
            "java.lang.String.toUpperCase()",
            "java.io.PrintStream.printf(java.lang.String, [Ljava.lang.Object;)",
            "java.io.PrintStream.format(java.lang.String, [Ljava.lang.Object;)",
            "java.time.format.DateTimeFormatter.ofPattern(java.lang.String)",
            "java.util.Locale.getDefault()");
    Set<String> faults = new TreeSet<>();
    for (JavaClass c : classes) {
      c.getMethodCallsFromSelf().stream()
          .filter(a -> followers.contains(a.getTarget().getFullName()))
          .forEach(a -> faults.add(a.getDescription()));
    }
    assertEquals("", String.join("\n", faults));
  }

  @Test
  void onlyTheLoopStepsAController() {
    Set<String> faults = new TreeSet<>();
    for (JavaClass c : classes) {
      if (!simulator(c) || home(c).equals("loop")) {
        continue;
      }
      c.getMethodCallsFromSelf().stream()
          .filter(a -> a.getTargetOwner().getName().equals(ROOT + "controller.Controller"))
          .forEach(a -> faults.add(a.getDescription()));
    }
    assertEquals("", String.join("\n", faults));
  }
}
