package org.broodbench.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.broodbench.input.BadInput;
import org.broodbench.input.Problem;
import org.broodbench.members.Secret;

/**
 * Where the secret of members is kept: a file that its owner alone can read, or an environment
 * variable. Never on the command line, which everybody on a machine can read.
 */
final class SecretFile {
  /** Environment variable that holds the secret where no file is named. */
  static final String VARIABLE = "BROODBENCH_SECRET";

  private static final Set<PosixFilePermission> OWNERS =
      EnumSet.of(
          PosixFilePermission.OWNER_READ,
          PosixFilePermission.OWNER_WRITE,
          PosixFilePermission.OWNER_EXECUTE);

  private SecretFile() {}

  /**
   * Reads it.
   *
   * @param file null to take the variable
   * @throws BadInput where there is none that can be used
   */
  static Secret read(Path file) {
    String text = file == null ? System.getenv(VARIABLE) : text(file);
    String found = file == null ? "the variable " + VARIABLE : file.toString();
    if (text == null || text.isBlank()) {
      throw refused(
          text == null ? "neither a file nor " + found : found + ", which is empty",
          "a file with the secret",
          "Make one with 'broodbench lend --new-secret FILE', and carry it to every machine.");
    }
    if (text.strip().length() < Secret.SHORTEST) {
      throw refused(
          found + " with " + text.strip().length() + " characters",
          "at least " + Secret.SHORTEST + " characters",
          "A short secret can be guessed: 'broodbench lend --new-secret FILE' draws a long one.");
    }
    return new Secret(text.strip());
  }

  private static String text(Path file) {
    try {
      if (Files.getFileStore(file).supportsFileAttributeView("posix")
          && !OWNERS.containsAll(Files.getPosixFilePermissions(file))) {
        throw refused(
            file
                + " with permissions "
                + PosixFilePermissions.toString(Files.getPosixFilePermissions(file)),
            "a file that nobody but its owner may read",
            "chmod 600 " + file);
      }
      return Files.readString(file, StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw refused(
          file + (Files.exists(file) ? ", which cannot be read" : ", which is not there"),
          "a file with the secret",
          "Make one with 'broodbench lend --new-secret FILE'.");
    }
  }

  /** Draws a new secret into a file that is not there yet, for its owner alone. */
  static void write(Path file) {
    try {
      boolean posix =
          Files.getFileStore(file.toAbsolutePath().getParent()).supportsFileAttributeView("posix");
      FileAttribute<?>[] owners =
          posix
              ? new FileAttribute<?>[] {
                PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------"))
              }
              : new FileAttribute<?>[0];
      Files.createFile(file, owners);
      Files.writeString(file, Secret.drawn() + "\n", StandardOpenOption.WRITE);
    } catch (FileAlreadyExistsException e) {
      throw new BadInput(
          List.of(
              new Problem(
                  "--new-secret",
                  0,
                  0,
                  "",
                  file + ", which is there already",
                  "the name of a new file",
                  "A secret in use is not overwritten.")));
    } catch (IOException e) {
      throw new BadInput(
          List.of(
              new Problem(
                  "--new-secret",
                  0,
                  0,
                  "",
                  file + ", which cannot be written",
                  "a file in a folder that can be written",
                  "")));
    }
  }

  private static BadInput refused(String found, String allowed, String hint) {
    return new BadInput(List.of(new Problem("--secret", 0, 0, "", found, allowed, hint)));
  }
}
