package org.broodbench.controller;

/** What one {@link Controller#step} asks of the outputs: a reusable, mutable set. */
public final class Commands {
  /** Heater relay closed. */
  public boolean heater;
}
