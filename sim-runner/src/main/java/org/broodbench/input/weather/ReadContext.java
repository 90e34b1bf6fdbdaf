package org.broodbench.input.weather;

import java.util.List;

/**
 * What a reader needs besides the lines.
 *
 * @param problems where mistakes go
 * @param options what to do about gaps
 * @param part true where the file is one of several that make a record: nothing is bridged yet and
 *     a variable may be absent
 * @param side lines of a file about the station that lies beside the data in an archive
 */
record ReadContext(ProblemList problems, ReadOptions options, boolean part, List<String> side) {}
