package org.broodbench.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/** The pages of the project, and the fenced blocks of a page. */
final class Pages {
  static final Path ROOT = Path.of("..").toAbsolutePath().normalize();

  /** A block between fences: what stands behind the opening fence, its lines, where it begins. */
  record Fence(Path page, int line, String language, List<String> lines) {}

  private Pages() {}

  /** All pages, but for what builds and runs leave behind. */
  static List<Path> all() {
    Set<String> left = Set.of("target", ".git", "broodbench-out");
    List<Path> pages = new ArrayList<>();
    try {
      Files.walkFileTree(
          ROOT,
          new java.nio.file.SimpleFileVisitor<>() {
            @Override
            public java.nio.file.FileVisitResult preVisitDirectory(
                Path dir, java.nio.file.attribute.BasicFileAttributes a) {
              return left.contains(dir.getFileName().toString())
                  ? java.nio.file.FileVisitResult.SKIP_SUBTREE
                  : java.nio.file.FileVisitResult.CONTINUE;
            }

            @Override
            public java.nio.file.FileVisitResult visitFile(
                Path file, java.nio.file.attribute.BasicFileAttributes a) {
              if (file.toString().endsWith(".md")) {
                pages.add(file);
              }
              return java.nio.file.FileVisitResult.CONTINUE;
            }
          });
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return pages.stream().sorted().toList();
  }

  static List<String> lines(Path page) {
    try (Stream<String> lines = Files.lines(page)) {
      return lines.toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static List<Fence> fences(Path page) {
    List<Fence> found = new ArrayList<>();
    List<String> inside = null;
    String language = "";
    int begin = 0;
    int number = 0;
    for (String line : lines(page)) {
      number++;
      if (line.startsWith("```")) {
        if (inside == null) {
          inside = new ArrayList<>();
          language = line.substring(3).trim();
          begin = number;
        } else {
          found.add(new Fence(page, begin, language, inside));
          inside = null;
        }
      } else if (inside != null) {
        inside.add(line);
      }
    }
    if (inside != null) {
      throw new IllegalStateException(page + ":" + begin + ": a block without end");
    }
    return found;
  }
}
