package org.broodbench.controller;

import java.lang.reflect.Field;
import java.lang.reflect.Modifier;

/** Commands as one line of text, for comparing and for messages. */
final class Show {
  private Show() {}

  static String commands(Commands out) {
    StringBuilder text = new StringBuilder();
    try {
      for (Field field : Commands.class.getFields()) {
        if (!Modifier.isStatic(field.getModifiers())) {
          text.append(field.getName()).append('=').append(field.get(out)).append(' ');
        }
      }
    } catch (IllegalAccessException e) {
      throw new AssertionError(e);
    }
    return text.toString();
  }
}
