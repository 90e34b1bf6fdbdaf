package org.broodbench.controller;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Breadth-first search over every state that a small model can reach, from power-up. */
final class Explorer {
  /** A part with scaled-down timings, what the search remembers beside it, and its inputs. */
  abstract static class Model {
    private final Part[] parts;

    /** What the invariants need to remember; part of the state. */
    final int[] aux;

    private final Words words = new Words();
    private final int count;

    Model(int auxWords, Part... parts) {
      this.parts = parts;
      this.aux = new int[auxWords];
      for (Part part : parts) {
        part.reset();
      }
      words.open(new int[0], 0);
      for (Part part : parts) {
        part.save(words);
      }
      this.count = words.position() + auxWords;
    }

    /** Words of state, those of the memory beside it included. */
    int words() {
      return count;
    }

    abstract int inputs();

    /** Steps the parts under this input and asserts what has to hold on the transition. */
    abstract void apply(int input);

    String describe(int input) {
      return Integer.toString(input);
    }

    void save(int[] state) {
      words.open(state, 0);
      for (Part part : parts) {
        part.save(words);
      }
      System.arraycopy(aux, 0, state, count - aux.length, aux.length);
    }

    void load(int[] state) {
      words.open(state, 0);
      for (Part part : parts) {
        part.restore(words);
      }
      if (words.bad()) {
        throw new AssertionError("a reached state is refused by restore");
      }
      System.arraycopy(state, count - aux.length, aux, 0, aux.length);
    }
  }

  /** How far a search went; closed when nothing new was left. */
  record Result(String name, long states, long transitions, boolean closed) {
    @Override
    public String toString() {
      return String.format(
          "%-22s %,12d states %,14d transitions %s",
          name, states, transitions, closed ? "all" : "bounded");
    }
  }

  private record Link(Key parent, int input) {}

  private static final class Key {
    private final byte[] bytes;
    private final int hash;

    Key(byte[] bytes) {
      this.bytes = bytes;
      this.hash = Arrays.hashCode(bytes);
    }

    @Override
    public boolean equals(Object other) {
      return other instanceof Key key && hash == key.hash && Arrays.equals(bytes, key.bytes);
    }

    @Override
    public int hashCode() {
      return hash;
    }
  }

  private final byte[] buffer = new byte[4096];

  Result explore(String name, Model model, long transitionsMost) {
    int[] state = new int[model.count];
    Map<Key, Link> seen = new HashMap<>();
    ArrayDeque<Key> queue = new ArrayDeque<>();
    model.save(state);
    Key first = pack(state);
    seen.put(first, new Link(null, -1));
    queue.add(first);
    long transitions = 0;
    while (!queue.isEmpty() && transitions < transitionsMost) {
      Key key = queue.remove();
      for (int input = 0; input < model.inputs(); input++) {
        unpack(key.bytes, state);
        model.load(state);
        try {
          model.apply(input);
        } catch (AssertionError e) {
          throw new AssertionError(name + ": " + e.getMessage() + path(model, seen, key, input), e);
        }
        transitions++;
        model.save(state);
        Key next = pack(state);
        if (seen.putIfAbsent(next, new Link(key, input)) == null) {
          queue.add(next);
        }
      }
    }
    return new Result(name, seen.size(), transitions, queue.isEmpty());
  }

  /** The shortest way to the failure. */
  private static String path(Model model, Map<Key, Link> seen, Key from, int last) {
    List<String> steps = new ArrayList<>();
    steps.add(model.describe(last));
    for (Link link = seen.get(from); link.parent() != null; link = seen.get(link.parent())) {
      steps.add(model.describe(link.input()));
    }
    Collections.reverse(steps);
    return "\n  " + String.join("\n  ", steps);
  }

  /** Seven bits a byte; most words are small. */
  private Key pack(int[] state) {
    int at = 0;
    for (int word : state) {
      int rest = (word << 1) ^ (word >> 31);
      while ((rest & ~0x7f) != 0) {
        buffer[at++] = (byte) (rest | 0x80);
        rest >>>= 7;
      }
      buffer[at++] = (byte) rest;
    }
    return new Key(Arrays.copyOf(buffer, at));
  }

  private static void unpack(byte[] bytes, int[] state) {
    int at = 0;
    for (int i = 0; i < state.length; i++) {
      int word = 0;
      int shift = 0;
      byte b;
      do {
        b = bytes[at++];
        word |= (b & 0x7f) << shift;
        shift += 7;
      } while (b < 0);
      state[i] = (word >>> 1) ^ -(word & 1);
    }
  }
}
