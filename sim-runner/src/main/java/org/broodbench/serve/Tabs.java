package org.broodbench.serve;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What each tab of the browser has on its page, so that nothing is lost on reload. A tab names
 * itself; the longest unused one goes when there are too many.
 */
final class Tabs {
  /** Own choice. */
  private static final int MOST = 64;

  /** What is known of one tab. */
  private static final class Tab {
    private String page = "";
    private long newest;
  }

  private final Map<String, Tab> tabs =
      new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Tab> eldest) {
          return size() > MOST;
        }
      };

  private Tab tab(String name) {
    return tabs.computeIfAbsent(name, n -> new Tab());
  }

  /** What the tab keeps of itself; empty where it is new. */
  synchronized String page(String name) {
    return tab(name).page;
  }

  synchronized void keep(String name, String page) {
    tab(name).page = page;
  }

  /** The number of a request for a run that begins. */
  synchronized long begins(String name) {
    return ++tab(name).newest;
  }

  /** Whether no later one has begun in the tab. */
  synchronized boolean isNewest(String name, long number) {
    return tab(name).newest == number;
  }
}
