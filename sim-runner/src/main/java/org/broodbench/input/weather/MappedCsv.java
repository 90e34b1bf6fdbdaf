package org.broodbench.input.weather;

import java.util.Arrays;
import org.broodbench.rig.CsvMapping;
import org.broodbench.sky.Stand;
import org.broodbench.sky.Variable;
import org.broodbench.sky.WeatherSeries;

/** Any table, read along a {@link CsvMapping}. */
final class MappedCsv implements WeatherFormat {
  private final CsvMapping m;

  MappedCsv(CsvMapping mapping) {
    m = mapping;
  }

  @Override
  public String id() {
    return "mapped_csv";
  }

  @Override
  public String title() {
    return "a table with a mapping";
  }

  @Override
  public boolean recognises(Head head) {
    return true;
  }

  @Override
  public WeatherSeries read(LineSource lines, ReadContext context) {
    ProblemList problems = context.problems();
    for (int i = 0; i <= m.skipLines(); i++) {
      if (!lines.next()) {
        throw problems.fatal(lines.number(), 0, "", "the end of the file", "a header", "");
      }
    }
    Fields f = new Fields(m.delimiter());
    f.split(lines);
    ColumnNames names = new ColumnNames(f, problems, lines.number());
    int[] time = m.timeColumns().stream().mapToInt(names::need).toArray();
    Picks picks = new Picks(problems);
    Stand[] stands = new Stand[Variable.values().length];
    Arrays.fill(stands, Stand.MEAN);
    int toStart =
        switch (m.stamp()) {
          case END -> -m.stepS();
          case START -> 0;
          case CENTRE -> -m.stepS() / 2;
        };
    for (CsvMapping.Column c : m.columns()) {
      Units.Scale scale = Units.of(c.variable(), c.unit(), m.stepS());
      if (scale == null) {
        problems.add(lines.number(), 1, c.name(), c.unit(), Units.known(c.variable()), "");
        continue;
      }
      picks.add(
          c.variable(),
          c.name(),
          names.need(c.name()),
          scale.factor(),
          scale.offset(),
          Double.NEGATIVE_INFINITY);
      if (c.spot()) {
        stands[c.variable().ordinal()] = Stand.instant(-toStart);
      }
    }
    problems.throwIfAny();
    SeriesCollector rows = new SeriesCollector(context, m.stepS());
    MappedRow row = new MappedRow(f);
    while (lines.next()) {
      if (lines.isBlank()) {
        continue;
      }
      f.split(lines);
      int line = lines.number();
      if (f.count() < names.count()) {
        problems.add(
            line,
            1,
            "",
            f.count() + " fields",
            names.count() + " fields",
            "Is the file cut short?");
        continue;
      }
      StringBuilder text = new StringBuilder();
      for (int t : time) {
        text.append(text.length() > 0 ? " " : "").append(f.text(t));
      }
      long at = stamp(text.toString());
      if (at == Stamps.NONE) {
        problems.add(
            line,
            f.column(time[0]),
            m.timeColumns().get(0),
            text.toString(),
            "a time in the order " + m.timeOrder(),
            "");
        continue;
      }
      rows.add(at + toStart, line, picks.row(row, line));
    }
    return rows.finish(stands)
        .formatId(id())
        .windHeightM(m.windHeightM())
        .place(m.place())
        .source(m.source())
        .build();
  }

  private long stamp(String text) {
    if (m.timeOrder().equals("unix")) {
      return text.matches("\\d{1,11}") ? Long.parseLong(text) : Stamps.NONE;
    }
    long local = Stamps.byOrder(text, m.timeOrder());
    return local == Stamps.NONE ? local : local - m.utcOffsetS();
  }

  /** Sees missing texts as empty and understands a decimal comma. */
  private final class MappedRow implements Row {
    private final Fields f;

    private MappedRow(Fields fields) {
      f = fields;
    }

    @Override
    public int count() {
      return f.count();
    }

    @Override
    public int column(int field) {
      return f.column(field);
    }

    @Override
    public boolean isEmpty(int field) {
      if (f.isEmpty(field)) {
        return true;
      }
      for (String code : m.missing()) {
        if (f.is(field, code)) {
          return true;
        }
      }
      return false;
    }

    @Override
    public String text(int field) {
      return f.text(field);
    }

    @Override
    public boolean is(int field, String text) {
      return f.is(field, text);
    }

    @Override
    public double number(int field) {
      if (!m.decimalComma()) {
        return f.number(field);
      }
      String text = f.text(field).replace(',', '.');
      return text.matches("[-+]?[0-9]*\\.?[0-9]+([eE][-+]?[0-9]+)?")
          ? Double.parseDouble(text)
          : Double.NaN;
    }
  }
}
