package org.broodbench.controller;

import java.lang.reflect.Field;
import java.lang.reflect.Modifier;
import java.util.ArrayList;
import java.util.List;

/** Commands as text and side by side, for comparing and for messages. */
final class Show {
  private static final List<Field> FIELDS = fields();

  private Show() {}

  private static List<Field> fields() {
    List<Field> fields = new ArrayList<>();
    for (Field field : Commands.class.getFields()) {
      if (!Modifier.isStatic(field.getModifiers())) {
        fields.add(field);
      }
    }
    return List.copyOf(fields);
  }

  private static Object value(Field field, Commands out) {
    try {
      return field.get(out);
    } catch (IllegalAccessException e) {
      throw new AssertionError(e);
    }
  }

  static String commands(Commands out) {
    StringBuilder text = new StringBuilder();
    for (Field field : FIELDS) {
      text.append(field.getName()).append('=').append(value(field, out)).append(' ');
    }
    return text.toString();
  }

  static boolean same(Commands one, Commands two) {
    for (Field field : FIELDS) {
      if (!value(field, one).equals(value(field, two))) {
        return false;
      }
    }
    return true;
  }

  static String difference(Commands expected, Commands found) {
    StringBuilder text = new StringBuilder();
    for (Field field : FIELDS) {
      Object one = value(field, expected);
      Object two = value(field, found);
      if (!one.equals(two)) {
        text.append(field.getName())
            .append(" expected ")
            .append(one)
            .append(" found ")
            .append(two)
            .append("; ");
      }
    }
    return text.toString();
  }
}
