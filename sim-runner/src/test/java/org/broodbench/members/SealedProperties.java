package org.broodbench.members;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.util.Arrays;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

class SealedProperties {
  private static final Secret ONE = new Secret("0123456789abcdef0123456789abcdef");
  private static final Secret OTHER = new Secret("0123456789abcdef0123456789abcdeF");

  @Property
  void whatWasSealedOpens(@ForAll byte[] words, @ForAll byte[] answer) throws IOException {
    byte[] question = Sealed.question(ONE, words);
    assertArrayEquals(words, Sealed.openQuestion(ONE, question));
    byte[] sealed = Sealed.answer(ONE, question, answer);
    assertArrayEquals(answer, Sealed.openAnswer(ONE, question, sealed));
  }

  @Property
  void noBitCanBeChanged(@ForAll byte[] words, @ForAll @IntRange(min = 0, max = 9999) int which) {
    byte[] question = Sealed.question(ONE, words);
    byte[] sealed = Sealed.answer(ONE, question, words);
    for (byte[] message : new byte[][] {question, sealed}) {
      int bit = which % (8 * message.length);
      message[bit / 8] ^= (byte) (1 << bit % 8);
    }
    assertThrows(IOException.class, () -> Sealed.openQuestion(ONE, question));
    byte[] asked = Sealed.question(ONE, words);
    assertThrows(IOException.class, () -> Sealed.openAnswer(ONE, asked, sealed));
  }

  @Property
  void anAnswerIsToItsOwnQuestion(
      @ForAll byte[] words, @ForAll byte[] others, @ForAll byte[] answer) {
    Assume.that(!Arrays.equals(words, others));
    byte[] sealed = Sealed.answer(ONE, Sealed.question(ONE, words), answer);
    byte[] other = Sealed.question(ONE, others);
    assertThrows(IOException.class, () -> Sealed.openAnswer(ONE, other, sealed));
  }

  @Property
  void otherSecretsAndOtherPurposesDoNotOpen(@ForAll byte[] words) {
    byte[] question = Sealed.question(ONE, words);
    assertThrows(IOException.class, () -> Sealed.openQuestion(OTHER, question));
    assertThrows(IOException.class, () -> Sealed.openAnswer(ONE, new byte[0], question));
    assertThrows(IOException.class, () -> Sealed.openQuestion(ONE, words));
  }
}
