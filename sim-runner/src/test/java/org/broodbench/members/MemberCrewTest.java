package org.broodbench.members;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BooleanSupplier;
import java.util.stream.IntStream;
import org.broodbench.study.Pieces;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(60)
class MemberCrewTest {
  private static final List<String> NAMES =
      IntStream.range(0, 200).mapToObj(String::valueOf).toList();
  private static final BooleanSupplier ON = () -> false;

  private final List<String> notices = Collections.synchronizedList(new ArrayList<>());
  private final AtomicInteger here = new AtomicInteger();
  private final Map<Integer, String> taken = new TreeMap<>();

  private final Pieces local =
      name -> {
        here.incrementAndGet();
        return ToyLine.square(name);
      };

  private boolean run(int threads, BooleanSupplier stop, Pieces how, ToyLine... lines)
      throws IOException {
    List<Member> members = new ArrayList<>();
    for (ToyLine line : lines) {
      members.add(line.member("toy " + members.size()));
    }
    try (MemberCrew crew = new MemberCrew(members, threads, stop, notices::add)) {
      return crew.run(
          NAMES, how, (piece, line) -> assertEquals(null, taken.put(piece, line), "taken twice"));
    }
  }

  private void assertAllIsTaken() {
    assertEquals(NAMES.size(), taken.size());
    taken.forEach((piece, line) -> assertEquals(String.valueOf(piece * piece), line));
  }

  @Test
  void allIsDoneOnceAndTheStudyIsHandedOverOnce() throws IOException {
    ToyLine one = new ToyLine(Integer.MAX_VALUE, 4);
    ToyLine two = new ToyLine(Integer.MAX_VALUE, 1);
    assertTrue(run(0, ON, local, one, two));
    assertAllIsTaken();
    assertEquals(0, here.get(), "no thread of this machine was asked for");
    assertEquals(NAMES.size(), one.asked.get() + two.asked.get());
    assertEquals(1, one.handedOver.get(), "four threads, one handing over");
    assertEquals(List.of(), notices);
  }

  @Test
  void thisMachineHelps() throws IOException {
    assertTrue(run(2, ON, local, new ToyLine(Integer.MAX_VALUE, 1)));
    assertAllIsTaken();
    assertTrue(here.get() > 0);
  }

  @Test
  void whatADyingMemberHadUnderWayGoesToTheOthers() throws IOException {
    ToyLine dies = new ToyLine(7, 3);
    ToyLine stays = new ToyLine(Integer.MAX_VALUE, 2);
    assertTrue(run(0, ON, local, dies, stays));
    assertAllIsTaken();
    assertEquals(0, here.get());
    assertTrue(notices.get(0).startsWith("Member toy 0 is out: the toy"), notices.toString());
    assertTrue(notices.get(0).endsWith("Its work goes to the others."), notices.toString());
    assertEquals(1, notices.size(), "three threads, one notice");
  }

  @Test
  void thisMachineGoesOnWhenAllAreGone() throws IOException {
    assertTrue(run(0, ON, local, new ToyLine(5, 2), new ToyLine(11, 2)));
    assertAllIsTaken();
    assertTrue(here.get() >= NAMES.size() - 16, "done here: " + here);
    assertEquals(2, notices.size());
    assertTrue(notices.get(1).contains("this machine goes on alone"), notices.toString());
  }

  @Test
  void onceStoppedNoFurtherPieceBegins() throws IOException {
    ToyLine toy = new ToyLine(Integer.MAX_VALUE, 2);
    BooleanSupplier stop = () -> toy.asked.get() + here.get() >= 20;
    assertFalse(run(1, stop, local, toy));
    // three doers: two more may have been under way
    assertTrue(taken.size() >= 20 && taken.size() <= 22, "taken " + taken.size());
  }

  @Test
  void aFaultOfThisMachineEndsTheStudy() {
    Pieces broken =
        name -> {
          throw new IllegalArgumentException("broken");
        };
    IllegalArgumentException e =
        assertThrows(IllegalArgumentException.class, () -> run(1, ON, broken, new ToyLine(0, 1)));
    assertEquals("broken", e.getMessage());
  }
}
