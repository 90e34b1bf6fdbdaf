package org.broodbench.members;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import org.broodbench.study.Crew;
import org.broodbench.study.Parallel;
import org.broodbench.study.Pieces;

/**
 * Threads of this machine and members, who take pieces from one heap. What a member had under way
 * when it went goes back onto the heap; when all are gone, this machine goes on alone.
 */
final class MemberCrew implements Crew {
  private final List<Member> members;
  private final int threads;
  private final BooleanSupplier stop;
  private final Consumer<String> notice;

  /**
   * A crew.
   *
   * @param members all have said hello
   * @param threads of this machine; 0 for none as long as a member is there
   * @param stop asked between pieces; once true, no further piece begins
   * @param notice hears what the user should know
   */
  MemberCrew(List<Member> members, int threads, BooleanSupplier stop, Consumer<String> notice) {
    this.members = new ArrayList<>(members);
    this.threads = threads;
    this.stop = stop;
    this.notice = notice;
  }

  /** Somebody who does pieces. */
  private interface Doer {
    String piece(String name) throws IOException;
  }

  /** A piece that was done, a fault of this machine, or a doer who ended: one of the three. */
  private record Said(int piece, String line, Throwable fault) {
    static final Said ENDED = new Said(-1, null, null);
  }

  @Override
  public boolean run(List<String> names, Pieces how, Parallel.Taker<String> taker) {
    Heap heap = new Heap(names.size(), stop);
    BlockingQueue<Said> said = new LinkedBlockingQueue<>();
    ExecutorService pool = Executors.newCachedThreadPool();
    try {
      int doers = begin(pool, heap, said, names, how);
      int taken = 0;
      while (taken < names.size()) {
        Said next = said.take();
        if (next.fault() instanceof RuntimeException fault) {
          throw fault;
        } else if (next.fault() != null) {
          throw new IllegalStateException(next.fault());
        } else if (next.line() != null) {
          taker.take(next.piece(), next.line());
          taken++;
        } else if (--doers == 0 && taken < names.size()) {
          if (stop.getAsBoolean()) {
            return false;
          }
          doers = begin(pool, heap, said, names, how); // the last member went
        }
      }
      return true;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return false;
    } finally {
      pool.shutdownNow();
    }
  }

  private int begin(
      ExecutorService pool, Heap heap, BlockingQueue<Said> said, List<String> names, Pieces how) {
    int doers = 0;
    List<Member> there;
    synchronized (members) {
      there = List.copyOf(members);
    }
    int own = there.isEmpty() ? Math.max(1, threads) : threads;
    for (int i = 0; i < Math.min(own, names.size()); i++, doers++) {
      pool.execute(() -> work(how::of, null, heap, said, names));
    }
    for (Member m : there) {
      for (int i = 0; i < m.threads(); i++, doers++) {
        pool.execute(() -> work(m::piece, m, heap, said, names));
      }
    }
    return doers;
  }

  /** One doer; the member is null for a thread of this machine. */
  private void work(
      Doer doer, Member member, Heap heap, BlockingQueue<Said> said, List<String> names) {
    try {
      for (int piece = heap.next(); piece >= 0; piece = heap.next()) {
        String line;
        try {
          line = doer.piece(names.get(piece));
        } catch (IOException e) {
          heap.putBack(piece);
          gone(member, e);
          return;
        }
        heap.done();
        said.add(new Said(piece, line, null));
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } catch (RuntimeException | Error e) {
      said.add(new Said(-1, null, e));
    } finally {
      said.add(Said.ENDED);
    }
  }

  private void gone(Member member, IOException why) {
    synchronized (members) {
      if (!members.remove(member)) {
        return; // another thread has told
      }
      // told inside, so that the last to go is the last to be told of
      notice.accept(
          "Member "
              + member.name()
              + " is out: "
              + why.getMessage()
              + (members.isEmpty()
                  ? ". No member is left: this machine goes on alone."
                  : ". Its work goes to the others."));
    }
    member.close();
  }

  @Override
  public void close() {
    List<Member> there;
    synchronized (members) {
      there = List.copyOf(members);
      members.clear();
    }
    there.forEach(Member::close);
  }
}
