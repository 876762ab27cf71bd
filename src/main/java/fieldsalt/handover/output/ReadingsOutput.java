package fieldsalt.handover.output;

import fieldsalt.basis.pair.ConvertedReadings;
import fieldsalt.handover.table.CsvTable;
import fieldsalt.handover.table.Rounding;
import fieldsalt.quantity.UnitSystem;
import fieldsalt.read.sample.Sample;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/** Owner of the two tables of {@code convert}. */
public final class ReadingsOutput {
  private ReadingsOutput() {}

  /** One row per usable reading. */
  public static CsvTable readings(ConvertedReadings converted) {
    return new CsvTable(
        OutputColumns.of("converted readings").names(UnitSystem.METRIC),
        converted.rows().stream().map(ReadingsOutput::cells).toList());
  }

  /** One row per laboratory, method and texture group. */
  public static CsvTable factors(ConvertedReadings converted) {
    return new CsvTable(
        OutputColumns.of("factors").names(UnitSystem.METRIC),
        converted.groups().stream().map(ReadingsOutput::cells).toList());
  }

  /** The factors by the names of their columns. */
  public static List<Map<String, Object>> factorsByName(ConvertedReadings converted) {
    CsvTable table = factors(converted);
    return table.rows().stream().map(row -> byName(table.header(), row)).toList();
  }

  private static Map<String, Object> byName(List<String> names, List<Object> row) {
    Map<String, Object> figures = new LinkedHashMap<>();
    for (int i = 0; i < names.size(); i++) {
      figures.put(names.get(i), row.get(i));
    }
    return figures;
  }

  private static List<Object> cells(ConvertedReadings.Row row) {
    Sample s = row.sample();
    return Arrays.asList(
        s.id(),
        s.depth().topCm(),
        s.depth().bottomCm(),
        s.date().map(Object::toString).orElse(""),
        s.laboratory(),
        row.method(),
        s.ec().map(ec -> Rounding.fourDigits(ec.dSPerM())).orElse(null),
        Rounding.fourDigits(row.ece()),
        Rounding.fourDigits(row.low()),
        Rounding.fourDigits(row.high()),
        Rounding.fourDigits(row.factor()),
        row.relation(),
        row.citation(),
        row.confidence(),
        row.findings().stream()
            .map(f -> f.code().id())
            .distinct()
            .collect(Collectors.joining("; ")),
        s.source().toString());
  }

  private static List<Object> cells(ConvertedReadings.Group g) {
    return Arrays.asList(
        g.laboratory(),
        g.method(),
        g.texture().name().toLowerCase(Locale.ROOT),
        g.readings(),
        g.pairs(),
        Rounding.fourDigits(g.priorFactor()),
        Rounding.fourDigits(g.priorSdLn()),
        Rounding.fourDigits(g.posteriorFactor()),
        Rounding.fourDigits(g.posteriorSdLn()),
        Rounding.fourDigits(g.ownSdLn()),
        Rounding.fourDigits(g.sdLnAfterOneMore()));
  }
}
