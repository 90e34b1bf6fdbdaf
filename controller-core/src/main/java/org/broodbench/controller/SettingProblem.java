package org.broodbench.controller;

/**
 * One setting that was refused.
 *
 * @param setting key of the setting, or keys joined with a comma where they clash
 * @param foundText what was found, with unit
 * @param allowedText what is allowed, with unit
 * @param hint the arithmetic or the reason behind the bound
 */
public record SettingProblem(String setting, String foundText, String allowedText, String hint) {
  @Override
  public String toString() {
    return setting + ": found " + foundText + ", allowed " + allowedText + " (" + hint + ")";
  }
}
