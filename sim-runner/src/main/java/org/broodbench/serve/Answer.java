package org.broodbench.serve;

import java.nio.charset.StandardCharsets;

/**
 * What is answered.
 *
 * @param status of HTTP
 * @param type media type
 * @param body content; may be empty
 * @param fileName name under which the browser keeps it; null where it is shown
 * @param policy content security policy; null for that of the page
 */
record Answer(int status, String type, byte[] body, String fileName, String policy) {
  static final String HTML = "text/html; charset=utf-8";
  static final String JSON = "application/json";
  static final String BYTES = "application/octet-stream";

  Answer(int status, String type, byte[] body, String fileName) {
    this(status, type, body, fileName, null);
  }

  static Answer of(String type, byte[] body) {
    return new Answer(200, type, body, null);
  }

  static Answer json(String text) {
    return of(JSON, text.getBytes(StandardCharsets.UTF_8));
  }

  /** A refusal in few words. */
  static Answer refused(int status, String words) {
    return new Answer(
        status, "text/plain; charset=utf-8", (words + "\n").getBytes(StandardCharsets.UTF_8), null);
  }
}
