/**
 * Conformance of firmware with the reference controller: vectors, the line protocol, links to a
 * process or a serial port, the first differing step, shrinking, recorded logs.
 */
package org.broodbench.firmware;
