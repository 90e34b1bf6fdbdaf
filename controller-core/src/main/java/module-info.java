/** The reference controller; needs java.base alone. */
module org.broodbench.controller {
  exports org.broodbench.controller;
}
