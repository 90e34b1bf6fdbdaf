/**
 * The controller of a heated hive: integers, one step, no clock, no allocation once constructed.
 */
package org.broodbench.controller;
