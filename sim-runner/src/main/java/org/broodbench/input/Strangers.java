package org.broodbench.input;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;

/** Words the refusal of a key that nobody declared. */
final class Strangers {
  private Strangers() {}

  static Problem problem(Keys keys, String path, boolean table, Spot spot) {
    int dot = path.lastIndexOf('.');
    String parent = dot < 0 ? "" : path.substring(0, dot);
    String name = path.substring(dot + 1);
    String hint =
        meant(keys, parent, name, path).map(near -> "did you mean " + near + "?").orElse("");
    return new Problem(
        spot.file(),
        spot.line(),
        spot.column(),
        path,
        table ? "unknown table" : "unknown key",
        "",
        hint.isEmpty() ? "known here: " + String.join(", ", keys.names(parent)) : hint);
  }

  /**
   * First among its neighbours, then anywhere by the whole path, then anywhere by the last name.
   */
  static Optional<String> meant(Keys keys, String parent, String name, String path) {
    Optional<String> sibling = DidYouMean.closest(name, keys.names(parent));
    if (sibling.isPresent()) {
      return sibling.map(found -> parent.isEmpty() ? found : parent + "." + found);
    }
    Collection<String> all = new ArrayList<>(keys.all().stream().map(Key::path).toList());
    keys.tables().forEach(table -> all.add(table.path()));
    Optional<String> whole = DidYouMean.closest(Keys.pattern(path), all);
    if (whole.isPresent()) {
      return whole;
    }
    List<String> sameName = all.stream().filter(known -> known.endsWith("." + name)).toList();
    List<String> wholePath = sameName.stream().filter(k -> k.endsWith("." + path)).toList();
    if (wholePath.size() == 1) {
      return Optional.of(wholePath.get(0));
    }
    List<String> inside = sameName.stream().filter(k -> k.startsWith(parent + ".")).toList();
    if (inside.size() == 1) {
      return Optional.of(inside.get(0));
    }
    return sameName.size() == 1 ? Optional.of(sameName.get(0)) : Optional.empty();
  }
}
