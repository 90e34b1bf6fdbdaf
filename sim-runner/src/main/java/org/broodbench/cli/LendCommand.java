package org.broodbench.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CountDownLatch;
import org.broodbench.input.BadInput;
import org.broodbench.input.Problem;
import org.broodbench.members.Members;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code lend}: this machine helps with the studies of another. */
@Command(
    name = "lend",
    description = {
      "Lends this machine to studies that another one runs with --members: listens until Ctrl-C ends it.",
      "Who asks must know the secret. What is sent is signed, not encrypted: only in a network that you trust."
    },
    mixinStandardHelpOptions = true,
    sortOptions = false)
final class LendCommand extends Verb {
  @Option(
      names = "--listen",
      paramLabel = "ADDRESS:PORT",
      defaultValue = "127.0.0.1:5701",
      description =
          "Address of this machine to listen on, and on no other; 127.0.0.1:5701 when left out. Port 0 takes a free one.")
  private String listen;

  @Option(
      names = "--secret",
      paramLabel = "FILE",
      description = "File with the secret; the variable BROODBENCH_SECRET when left out.")
  private Path secret;

  @Option(
      names = "--threads",
      paramLabel = "N",
      description = "How many runs at a time; all processors when left out.")
  private Integer threads;

  @Option(
      names = "--new-secret",
      paramLabel = "FILE",
      description = "Draw a new secret into a new file and do nothing else.")
  private Path newSecret;

  LendCommand(Console console) {
    super(console);
  }

  @Override
  public Integer call() {
    if (newSecret != null) {
      SecretFile.write(newSecret);
      console().out().println("Written: " + newSecret);
      return 0;
    }
    MemberOptions.needEngine("lend");
    Members.Address address = MemberOptions.address(listen);
    if (address == null) {
      throw new BadInput(List.of(MemberOptions.problem("--listen", listen)));
    }
    int most = threads == null ? Runtime.getRuntime().availableProcessors() : threads;
    if (most < 1 || most > 256) {
      throw new BadInput(
          List.of(new Problem("--threads", 0, 0, "", String.valueOf(most), "1 to 256", "")));
    }
    CountDownLatch ends = new CountDownLatch(1);
    Runtime.getRuntime().addShutdownHook(new Thread(ends::countDown, "end the loan"));
    try (Members.Lent lent = Members.lend(address, SecretFile.read(secret), most)) {
      console()
          .out()
          .printf(
              Locale.ROOT,
              "Lends %d %s on %s. Ctrl-C ends it.%n",
              most,
              most == 1 ? "thread" : "threads",
              new Members.Address(address.host(), lent.port()));
      console().out().flush();
      ends.await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    return 0;
  }
}
