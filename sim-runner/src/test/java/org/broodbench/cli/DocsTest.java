package org.broodbench.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.broodbench.input.ScenarioReader;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;
import picocli.CommandLine;

/** The pages name commands, options, tests and files that are there. */
class DocsTest {
  private static final Pattern SPAN = Pattern.compile("`([^`]+)`");
  private static final Pattern LINK = Pattern.compile("\\]\\(([^)\\s]+)\\)");
  private static final Pattern START =
      Pattern.compile("^(?:\\$ )?(?:(?:sim-runner/)?bin[/\\\\])?broodbench(?:\\.cmd)? +(.*)$");

  /** A command line of a page: its words behind the name of the program; whole, or a mention. */
  private record Typed(String where, List<String> words, boolean whole) {}

  private static CommandLine program() {
    PrintStream nowhere =
        new PrintStream(OutputStream.nullOutputStream(), true, StandardCharsets.UTF_8);
    return Main.line(nowhere, nowhere);
  }

  /** Words of a shell up to a comment, a pipe or an ampersand; quotes keep a word together. */
  private static List<String> words(String line) {
    List<String> words = new ArrayList<>();
    StringBuilder word = new StringBuilder();
    boolean inWord = false;
    char quote = 0;
    for (char c : (line + " ").toCharArray()) {
      if (quote != 0) {
        if (c == quote) {
          quote = 0;
        } else {
          word.append(c);
        }
      } else if (c == '"' || c == '\'') {
        quote = c;
        inWord = true;
      } else if (c == ' ') {
        if (inWord) {
          words.add(word.toString());
          word.setLength(0);
          inWord = false;
        }
      } else if (!inWord && (c == '#' || c == '|' || c == '&' || c == '>')) {
        return words;
      } else {
        word.append(c);
        inWord = true;
      }
    }
    return words;
  }

  /** A line that says what may stand where, as one that somebody could type. */
  private static List<String> typable(List<String> words) {
    List<String> typed = new ArrayList<>();
    for (String raw : words) {
      String word = raw.replace("[", "").replace("]", "");
      switch (word) {
        case "...", "" -> {}
        case "N", "WEEKS", "DAYS", "MEMBERS", "YEARS" -> typed.add("2");
        case "YEAR" -> typed.add("2001");
        case "DATE" -> typed.add("2027-04-20");
        case "VOLTS" -> typed.add("12.4");
        case "LOW" -> typed.add("-5");
        default -> typed.add(word);
      }
    }
    return typed;
  }

  private static List<Typed> commands() {
    Set<String> verbs = program().getSubcommands().keySet();
    List<Typed> found = new ArrayList<>();
    for (Path page : Pages.all()) {
      String name = Pages.ROOT.relativize(page).toString();
      Set<Integer> fenced = new HashSet<>();
      for (Pages.Fence fence : Pages.fences(page)) {
        int number = fence.line();
        for (String line : fence.lines()) {
          number++;
          fenced.add(number);
          Matcher start = START.matcher(line);
          if (start.matches()) {
            found.add(new Typed(name + ":" + number, typable(words(start.group(1))), true));
          }
        }
      }
      int number = 0;
      for (String line : Pages.lines(page)) {
        number++;
        if (fenced.contains(number)) {
          continue;
        }
        Matcher span = SPAN.matcher(line);
        while (span.find()) {
          String text = span.group(1);
          Matcher start = START.matcher(text);
          List<String> words = words(start.matches() ? start.group(1) : text);
          boolean verbWithOption =
              words.size() > 1 && verbs.contains(words.get(0)) && words.get(1).startsWith("--");
          if (start.matches() || verbWithOption) {
            found.add(new Typed(name + ":" + number, typable(words), start.matches()));
          }
        }
      }
    }
    return found;
  }

  @Test
  void everyCommandLineParses() {
    List<Typed> commands = commands();
    assertTrue(commands.size() > 50, "found " + commands.size());
    List<String> wrong = new ArrayList<>();
    CommandLine program = program();
    for (Typed typed : commands) {
      try {
        program.parseArgs(typed.words().toArray(String[]::new));
      } catch (CommandLine.MissingParameterException e) {
        if (typed.whole()) {
          wrong.add(typed.where() + ": " + typed.words() + ": " + e.getMessage());
        }
      } catch (CommandLine.ParameterException e) {
        wrong.add(typed.where() + ": " + typed.words() + ": " + e.getMessage());
      }
      for (String word : typed.words()) {
        if (word.startsWith("scenarios/") && !Files.isRegularFile(Pages.ROOT.resolve(word))) {
          wrong.add(typed.where() + ": no " + word);
        }
      }
    }
    assertEquals(List.of(), wrong);
  }

  @Test
  void everyVerbIsShown() {
    Set<String> shown = new TreeSet<>();
    for (Typed typed : commands()) {
      if (!typed.words().isEmpty()) {
        shown.add(typed.words().get(0));
      }
    }
    Set<String> missing = new TreeSet<>(program().getSubcommands().keySet());
    missing.removeAll(shown);
    assertEquals(Set.of(), missing);
  }

  @Test
  void everyOptionInRunningTextExists() {
    Set<String> options = new HashSet<>();
    for (CommandLine verb : program().getSubcommands().values()) {
      options.addAll(verb.getCommandSpec().optionsMap().keySet());
    }
    List<String> wrong = new ArrayList<>();
    for (Path page : Pages.all()) {
      int number = 0;
      for (String line : Pages.lines(page)) {
        number++;
        Matcher span = SPAN.matcher(line);
        while (span.find()) {
          if (span.group(1).startsWith("--")) {
            String option = words(span.group(1)).get(0).split("=")[0];
            if (!options.contains(option)) {
              wrong.add(Pages.ROOT.relativize(page) + ":" + number + ": " + option);
            }
          }
        }
      }
    }
    assertEquals(List.of(), wrong);
  }

  @Test
  void everyTestAndProfileThatMavenIsToldExists() throws Exception {
    String poms =
        Files.readString(Pages.ROOT.resolve("pom.xml"))
            + Files.readString(Pages.ROOT.resolve("sim-runner/pom.xml"))
            + Files.readString(Pages.ROOT.resolve("controller-core/pom.xml"));
    Set<String> classes = new HashSet<>();
    for (String module : List.of("controller-core", "sim-runner")) {
      try (Stream<Path> files = Files.walk(Pages.ROOT.resolve(module).resolve("src/test/java"))) {
        files.forEach(f -> classes.add(f.getFileName().toString().replace(".java", "")));
      }
    }
    List<String> wrong = new ArrayList<>();
    for (Path page : Pages.all()) {
      for (String line : Pages.lines(page)) {
        Matcher test = Pattern.compile("-Dtest=([A-Za-z,]+)").matcher(line);
        while (test.find()) {
          for (String name : test.group(1).split(",")) {
            if (!classes.contains(name)) {
              wrong.add(page + ": " + name);
            }
          }
        }
        Matcher profile = Pattern.compile("mvn [^`]*?-P([a-z]+)").matcher(line);
        while (profile.find()) {
          if (!poms.contains("<id>" + profile.group(1) + "</id>")) {
            wrong.add(page + ": -P" + profile.group(1));
          }
        }
      }
    }
    assertEquals(List.of(), wrong);
  }

  /** Places in a page that a link may name: its headings, as they are written into addresses. */
  private static Set<String> anchors(List<String> lines) {
    Set<String> anchors = new HashSet<>();
    for (String line : lines) {
      if (line.startsWith("#")) {
        String title = line.replaceFirst("^#+ ", "").toLowerCase(Locale.ROOT);
        anchors.add(title.replaceAll("[^\\p{L}\\p{N} _-]", "").replace(' ', '-'));
      }
    }
    return anchors;
  }

  /** The links of a page that lead to nothing, when files stand where {@code there} has them. */
  private static List<String> brokenLinks(Map<String, Path> there) {
    Set<String> folders = new HashSet<>();
    for (String name : there.keySet()) {
      for (int cut = name.lastIndexOf('/'); cut > 0; cut = name.lastIndexOf('/', cut - 1)) {
        folders.add(name.substring(0, cut));
      }
    }
    List<String> broken = new ArrayList<>();
    for (Map.Entry<String, Path> entry : there.entrySet()) {
      if (!entry.getKey().endsWith(".md")) {
        continue;
      }
      Path folder = Path.of("/" + entry.getKey()).getParent();
      for (String line : Pages.lines(entry.getValue())) {
        Matcher link = LINK.matcher(SPAN.matcher(line).replaceAll(""));
        while (link.find()) {
          String target = link.group(1);
          if (target.startsWith("https://")) {
            continue;
          }
          int hash = target.indexOf('#');
          String file = hash < 0 ? target : target.substring(0, hash);
          String name =
              file.isEmpty()
                  ? entry.getKey()
                  : folder.resolve(file).normalize().toString().substring(1);
          boolean found = there.containsKey(name) || folders.contains(name);
          if (found && hash >= 0) {
            found = anchors(Pages.lines(there.get(name))).contains(target.substring(hash + 1));
          }
          if (!found) {
            broken.add(entry.getKey() + ": " + target);
          }
        }
      }
    }
    return broken;
  }

  @Test
  void everyLinkLeadsSomewhere() throws Exception {
    Map<String, Path> there = new TreeMap<>();
    for (String part : List.of("scenarios", "sim-runner", "controller-core")) {
      try (Stream<Path> files = Files.walk(Pages.ROOT.resolve(part))) {
        files
            .filter(f -> Files.isRegularFile(f) && !f.toString().contains("target"))
            .filter(f -> !f.startsWith(Pages.ROOT.resolve("sim-runner/src/dist")))
            .forEach(f -> there.put(slashed(Pages.ROOT.relativize(f)), f));
      }
    }
    for (String name : List.of("README.md", "DEVELOPERS.md", "LICENSE")) {
      there.put(name, Pages.ROOT.resolve(name));
    }
    assertEquals(List.of(), brokenLinks(there));
  }

  private static String slashed(Path path) {
    return path.toString().replace('\\', '/');
  }

  /** Where the description of the zip puts each page and scenario. */
  private static Map<String, Path> zip() throws Exception {
    Map<String, Path> there = new HashMap<>();
    Element parts =
        DocumentBuilderFactory.newInstance()
            .newDocumentBuilder()
            .parse(Path.of("src", "assembly", "parts.xml").toFile())
            .getDocumentElement();
    var sets = parts.getElementsByTagName("fileSet");
    for (int i = 0; i < sets.getLength(); i++) {
      Element set = (Element) sets.item(i);
      Path directory = Path.of(text(set, "directory")).toAbsolutePath().normalize();
      List<String> includes = new ArrayList<>();
      var wanted = set.getElementsByTagName("include");
      for (int k = 0; k < wanted.getLength(); k++) {
        includes.add(wanted.item(k).getTextContent());
      }
      String out = text(set, "outputDirectory");
      try (Stream<Path> files = Files.walk(directory)) {
        for (Path file : files.filter(Files::isRegularFile).toList()) {
          Path inside = directory.relativize(file);
          boolean wantedFile =
              includes.isEmpty()
                  || includes.stream()
                      .anyMatch(
                          p -> file.getFileSystem().getPathMatcher("glob:" + p).matches(inside));
          if (wantedFile) {
            there.put((out.isEmpty() ? "" : out + "/") + slashed(inside), file);
          }
        }
      }
    }
    var files = parts.getElementsByTagName("file");
    for (int i = 0; i < files.getLength(); i++) {
      Element file = (Element) files.item(i);
      String source = text(file, "source");
      if (!source.startsWith("${")) {
        String out = text(file, "outputDirectory");
        Path path = Path.of(source).toAbsolutePath().normalize();
        there.put((out.isEmpty() ? "" : out + "/") + path.getFileName(), path);
      }
    }
    return there;
  }

  private static String text(Element parent, String name) {
    var found = parent.getElementsByTagName(name);
    return found.getLength() == 0 ? "" : found.item(0).getTextContent().trim();
  }

  @Test
  void everyLinkLeadsSomewhereInTheZipToo() throws Exception {
    Map<String, Path> there = zip();
    assertTrue(there.containsKey("README.md") && there.containsKey("help/docs/README.md"));
    there.put("licences/openhtmltopdf-core", Path.of("."));
    assertEquals(List.of(), brokenLinks(there));
  }

  @Test
  void theScenarioOfTheTutorialIsSoundAtEveryStep() {
    List<Tutorial.Step> steps = Tutorial.steps();
    assertEquals("", steps.get(0).scenario());
    assertTrue(steps.size() > 5);
    for (Tutorial.Step step : steps.subList(1, steps.size())) {
      byte[] text = step.scenario().getBytes(StandardCharsets.UTF_8);
      ScenarioReader.read("my-rig.toml", text, List.of());
    }
  }

  @Test
  void everyPageIsReachedFromTheFirst() {
    Path docs = Path.of("docs").toAbsolutePath().normalize();
    Set<Path> reached = new TreeSet<>();
    List<Path> open = new ArrayList<>(List.of(docs.resolve("README.md")));
    while (!open.isEmpty()) {
      Path page = open.remove(open.size() - 1);
      if (!reached.add(page) || !page.startsWith(docs)) {
        continue;
      }
      for (String line : Pages.lines(page)) {
        Matcher link = LINK.matcher(line);
        while (link.find()) {
          if (link.group(1).endsWith(".md")) {
            open.add(page.getParent().resolve(link.group(1)).normalize());
          }
        }
      }
    }
    List<Path> lost =
        Pages.all().stream().filter(p -> p.startsWith(docs) && !reached.contains(p)).toList();
    assertEquals(List.of(), lost);
  }
}
