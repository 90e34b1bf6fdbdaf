package org.broodbench.members;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import org.broodbench.input.BadInput;
import org.broodbench.input.Problem;
import org.broodbench.recipe.Recipe;
import org.broodbench.recipe.RecipeBytes;
import org.broodbench.study.Crew;

/**
 * Spreads studies over machines, and lends this one. Works only where the engine is there; all else
 * in the program works without it.
 */
public final class Members {
  private static final String ENGINE = "com.hazelcast.core.HazelcastInstance";

  private Members() {}

  /** Where a member is. */
  public record Address(String host, int port) {
    /** As people write it. */
    @Override
    public String toString() {
      return (host.contains(":") ? "[" + host + "]" : host) + ":" + port;
    }
  }

  /** A member of this process; it listens until it is closed. */
  public interface Lent extends AutoCloseable {
    /** The port that it listens on. */
    int port();

    @Override
    void close();
  }

  /** Whether the engine is on the class path. */
  public static boolean engineIsHere() {
    try {
      Class.forName(ENGINE, false, Members.class.getClassLoader());
      return true;
    } catch (ClassNotFoundException e) {
      return false;
    }
  }

  /**
   * Calls members and makes a crew of them and of threads of this machine.
   *
   * @param threads of this machine; 0 for none as long as a member is there
   * @param stop asked between pieces; once true, no further piece begins
   * @param notice hears what the user should know
   * @throws BadInput with every member that cannot be had
   */
  public static Crew crew(
      List<Address> addresses,
      Secret secret,
      Recipe recipe,
      int threads,
      BooleanSupplier stop,
      Consumer<String> notice) {
    byte[] bytes = RecipeBytes.of(recipe);
    String build = Build.name();
    List<Problem> problems = new ArrayList<>();
    List<Member> members = new ArrayList<>();
    for (Address a : addresses) {
      try {
        Member member =
            new Member(a.toString(), Engine.call(a.host(), a.port(), secret), secret, bytes);
        members.add(member);
        String other = member.hello(build);
        if (other != null) {
          problems.add(
              problem(
                  a + " runs build " + other,
                  "members of the build that runs here, " + build,
                  "Copy one built program to every machine."));
        }
      } catch (IOException e) {
        problems.add(
            problem(
                a + ": " + e.getMessage(),
                "members that were started by 'broodbench lend' with the same secret",
                ""));
      }
    }
    if (!problems.isEmpty()) {
      members.forEach(Member::close);
      throw new BadInput(problems);
    }
    return new MemberCrew(members, threads, stop, notice);
  }

  /**
   * Lends this machine to who knows the secret.
   *
   * @param address an address of this machine, which alone is listened on; port 0 for a free one
   * @param threads how many pieces at a time
   * @throws BadInput where it cannot listen there
   */
  public static Lent lend(Address address, Secret secret, int threads) {
    try {
      Hand hand = new Hand(secret, Build.name(), threads);
      Engine.Listening listening =
          Engine.listen(address.host(), address.port(), secret, hand, threads);
      return new Lent() {
        @Override
        public int port() {
          return listening.port();
        }

        @Override
        public void close() {
          listening.close();
        }
      };
    } catch (IOException e) {
      throw new BadInput(
          List.of(
              new Problem(
                  "--listen",
                  0,
                  0,
                  "",
                  address + ": " + e.getMessage(),
                  "an address of this machine and a port that is free",
                  "")));
    }
  }

  private static Problem problem(String found, String allowed, String hint) {
    return new Problem("--members", 0, 0, "", found, allowed, hint);
  }
}
