package org.broodbench.members;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.broodbench.controller.Settings;
import org.broodbench.input.Tuning;
import org.broodbench.recipe.Recipe;
import org.broodbench.recipe.RecipeBytes;
import org.broodbench.recipe.SmallRecipes;
import org.broodbench.recipe.Studies;
import org.broodbench.rig.TuneSpec;
import org.broodbench.study.Pieces;
import org.junit.jupiter.api.Test;

class HandTest {
  private static final Secret SECRET = ToyLine.SECRET;

  private final Hand hand = new Hand(SECRET, "this build", 3);

  private Line line(Hand to) {
    return new Line() {
      @Override
      public byte[] ask(byte[] question) {
        return to.answer(question);
      }

      @Override
      public void close() {
        // a hand of this process needs no end
      }
    };
  }

  /** What a member gives for pieces is what this machine gives, to the last bit. */
  private void assertSame(Recipe recipe, String... names) throws IOException {
    Pieces here = Studies.pieces(recipe);
    Set<String> lines = new HashSet<>();
    try (Member member = new Member("it", line(hand), SECRET, RecipeBytes.of(recipe))) {
      for (String name : names) {
        String told = member.piece(name);
        assertEquals(here.of(name), told, name);
        lines.add(told);
      }
    }
    assertEquals(names.length, lines.size(), "different pieces give different lines");
  }

  @Test
  void piecesOfEveryStudyAreThoseOfThisMachine() throws IOException {
    assertSame(
        SmallRecipes.stress(),
        "0 none",
        "1 probe_open low",
        "0 probe_open+probe_stuck",
        "1 relay_welded+lid_off high");
    Recipe tune = SmallRecipes.tune();
    TuneSpec spec = Tuning.spec(tune.rebuilt(List.of()), tune.text(), tune.settings());
    Settings now = tune.weather().scenario().controller().settings();
    String own =
        spec.knobs().stream()
            .map(k -> String.valueOf(now.get(k.setting())))
            .collect(Collectors.joining(","));
    assertSame(tune, own + " season 0", own + " season 6");
    assertSame(SmallRecipes.size(), "[0, 0, 0, 0, 0]season 1", "[1, 1, 1, 1, 1]season 3");
    assertSame(SmallRecipes.sure(), "0", "39");
  }

  @Test
  void whoDoesNotKnowTheSecretHearsNothing() {
    byte[] hello = Words.of(Words.HELLO, "this build");
    Secret other = new Secret("ffffffffffffffffffffffffffffffff");
    assertEquals(0, hand.answer(hello).length);
    assertEquals(0, hand.answer(Sealed.question(other, hello)).length);
    assertEquals(0, hand.answer(new byte[0]).length);
    Member member = new Member("it", line(hand), other, new byte[0]);
    assertThrows(IOException.class, () -> member.hello("this build"));
  }

  @Test
  void anotherBuildIsTold() throws IOException {
    Member member = new Member("it", line(hand), SECRET, new byte[0]);
    assertEquals(null, member.hello("this build"));
    assertEquals(3, member.threads());
    assertEquals("this build", member.hello("an older build"));
    assertEquals(Build.name(), Build.name());
  }

  @Test
  void whatCannotBeDoneIsSaid() {
    byte[] damaged = RecipeBytes.of(SmallRecipes.sure());
    byte[] recipe = Arrays.copyOf(damaged, damaged.length / 2);
    assertSaid("", recipe, "0");
    byte[] whole = RecipeBytes.of(SmallRecipes.sure());
    assertSaid("For input string", whole, "no number");
    assertSaid("40", whole, "40"); // members of the ensemble are 0 to 39
    assertSaid("", RecipeBytes.of(SmallRecipes.stress()), "7 none");
  }

  private void assertSaid(String part, byte[] recipe, String piece) {
    Member member = new Member("it", line(hand), SECRET, recipe);
    IOException e = assertThrows(IOException.class, () -> member.piece(piece));
    assertTrue(e.getMessage().startsWith("it says: "), e.getMessage());
    assertTrue(e.getMessage().contains(part), e.getMessage());
  }
}
