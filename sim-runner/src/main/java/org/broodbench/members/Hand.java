package org.broodbench.members;

import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import org.broodbench.input.BadInput;
import org.broodbench.input.ProblemText;
import org.broodbench.recipe.Recipe;
import org.broodbench.recipe.RecipeBytes;
import org.broodbench.recipe.Studies;
import org.broodbench.study.Pieces;

/**
 * Answers what a member is asked. All it can be asked for is pieces of studies, which it makes from
 * recipes: numbers and texts. It opens no file and runs nothing but simulations, whatever it is
 * told.
 */
final class Hand {
  /** Studies that are kept at a time: that of now and that of before. */
  private static final int KEPT = 2;

  private final Secret secret;
  private final String build;
  private final int threads;
  private final Map<String, FutureTask<Pieces>> studies =
      new LinkedHashMap<>() {
        @Override
        protected boolean removeEldestEntry(Map.Entry<String, FutureTask<Pieces>> eldest) {
          return size() > KEPT;
        }
      };

  Hand(Secret secret, String build, int threads) {
    this.secret = secret;
    this.build = build;
    this.threads = threads;
  }

  /** The sealed answer to a sealed question; nothing to a question without the secret. */
  byte[] answer(byte[] question) {
    try {
      byte[] asked = Sealed.openQuestion(secret, question);
      return Sealed.answer(secret, question, words(asked));
    } catch (IOException e) {
      return new byte[0];
    }
  }

  private byte[] words(byte[] asked) {
    try {
      return switch (Words.what(asked)) {
        case Words.HELLO -> hello(Words.text(asked));
        case Words.STUDY -> study(Words.rest(asked));
        case Words.PIECE -> piece(Words.text(asked));
        default -> Words.of(Words.SORRY, "it does not know what it is asked");
      };
    } catch (BadInput e) {
      return Words.of(Words.SORRY, ProblemText.render(e.problems()));
    } catch (IOException | RuntimeException | OutOfMemoryError e) {
      return Words.of(Words.SORRY, e.toString());
    }
  }

  private byte[] hello(String itsBuild) {
    return itsBuild.equals(build)
        ? Words.of(Words.FINE, String.valueOf(threads))
        : Words.of(Words.WHICH, build);
  }

  private byte[] study(byte[] recipe) throws IOException {
    FutureTask<Pieces> made;
    synchronized (studies) {
      made =
          studies.computeIfAbsent(
              Words.digest(recipe),
              digest ->
                  new FutureTask<>(
                      () -> {
                        Recipe read = RecipeBytes.read(recipe);
                        return Studies.pieces(read);
                      }));
    }
    made.run(); // only the first of those who come does it
    pieces(made);
    return Words.of(Words.FINE, "");
  }

  private byte[] piece(String text) throws IOException {
    if (text.length() < Words.DIGEST) {
      return Words.of(Words.SORRY, "a piece without its study");
    }
    FutureTask<Pieces> made;
    synchronized (studies) {
      made = studies.get(text.substring(0, Words.DIGEST));
    }
    return made == null
        ? Words.of(Words.WHICH, "")
        : Words.of(Words.FINE, pieces(made).of(text.substring(Words.DIGEST)));
  }

  private static Pieces pieces(FutureTask<Pieces> made) throws IOException {
    try {
      return made.get();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("it is ending", e);
    } catch (ExecutionException e) {
      if (e.getCause() instanceof BadInput bad) {
        throw bad;
      }
      throw new IOException(e.getCause().toString(), e.getCause());
    }
  }
}
