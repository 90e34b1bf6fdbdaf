package org.broodbench.serve;

import java.util.Arrays;
import java.util.List;

/**
 * What is asked, after every check at the gate.
 *
 * @param method GET or POST
 * @param path as it is, without a query
 * @param tab which tab of the browser asks; empty where none does
 * @param body at most {@link LiveServer#MOST_BODY_BYTES}
 */
record Question(String method, String path, String tab, String body) {
  /** The lines of the body that hold something. */
  List<String> lines() {
    return Arrays.stream(body.split("\n")).map(String::strip).filter(l -> !l.isEmpty()).toList();
  }
}
