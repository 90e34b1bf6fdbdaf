/** What a field log says about a hive: cleaning, relays, fit, confidence, alarms, next steps. */
package org.broodbench.calibrate;
