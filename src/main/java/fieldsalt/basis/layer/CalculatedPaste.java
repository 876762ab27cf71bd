package fieldsalt.basis.layer;

import fieldsalt.basis.relation.DefaultMultiplier;
import fieldsalt.basis.relation.EceRelation;
import fieldsalt.basis.relation.MethodKey;
import fieldsalt.basis.relation.Outcome;
import fieldsalt.basis.relation.Relations;
import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.finding.Place;
import fieldsalt.quantity.Method;
import fieldsalt.read.sample.Sample;
import fieldsalt.read.sample.Soil;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * Finds "ECe" columns that a laboratory calculated from its cheap reading: they are neither pair
 * nor paste. The ratio of the two is constant (SD of ln ratio below 0.02 in four or more rows of
 * one texture), or every row of two laboratories' columns (two or more rows; three or more where
 * only one texture of them fits) is within 1 % of one published relation, give or take the rounding
 * of the printed number.
 */
final class CalculatedPaste {
  private static final double CONSTANT_SD = 0.02;
  private static final int CONSTANT_ROWS = 4;
  private static final double NEAR = 0.01;
  private static final double BY_CHANCE = 0.06;

  private final Set<LayerReading> calculated = Collections.newSetFromMap(new IdentityHashMap<>());
  private final List<Finding> findings = new ArrayList<>();

  /** A paste column beside a cheap one. */
  private record Columns(String pasteLaboratory, String laboratory, MethodKey method)
      implements Comparable<Columns> {
    @Override
    public int compareTo(Columns other) {
      int byPaste = pasteLaboratory.compareTo(other.pasteLaboratory);
      int byLaboratory = laboratory.compareTo(other.laboratory);
      return byPaste != 0
          ? byPaste
          : byLaboratory != 0 ? byLaboratory : method.compareTo(other.method);
    }
  }

  private record Beside(LayerReading paste, LayerReading cheap) {
    double pasteEc() {
      return paste.sample().ec().orElseThrow().dSPerM();
    }

    double cheapEc() {
      return cheap.sample().ec().orElseThrow().dSPerM();
    }

    double lnRatio() {
      return Math.log(pasteEc() / cheapEc());
    }
  }

  CalculatedPaste(Map<LayerKey, List<LayerReading>> layers) {
    Map<Columns, List<Beside>> columns = new TreeMap<>();
    layers.values().stream()
        .filter(rows -> rows.size() > 1)
        .forEach(rows -> collect(rows, columns));
    columns.forEach(this::judge);
  }

  boolean contains(LayerReading reading) {
    return calculated.contains(reading);
  }

  List<Finding> findings() {
    return List.copyOf(findings);
  }

  private static void collect(List<LayerReading> rows, Map<Columns, List<Beside>> columns) {
    for (LayerReading paste : rows) {
      for (LayerReading cheap : rows) {
        if (paste.method().isBasis() && cheap.method().method() != Method.PASTE) {
          Columns key =
              new Columns(paste.sample().laboratory(), cheap.sample().laboratory(), cheap.method());
          columns.computeIfAbsent(key, k -> new ArrayList<>()).add(new Beside(paste, cheap));
        }
      }
    }
  }

  private void judge(Columns columns, List<Beside> rows) {
    String relation = published(columns.method, rows, 2);
    if (!relation.isEmpty()) {
      mark(columns, rows, "it is that of " + relation);
      return;
    }
    Map<String, List<Beside>> byTexture = new TreeMap<>();
    rows.forEach(row -> byTexture.computeIfAbsent(texture(row), t -> new ArrayList<>()).add(row));
    byTexture.values().forEach(same -> judgeTexture(columns, same));
  }

  private void judgeTexture(Columns columns, List<Beside> rows) {
    String relation = published(columns.method, rows, 3);
    if (!relation.isEmpty()) {
      mark(columns, rows, "it is that of " + relation);
    } else if (rows.size() >= CONSTANT_ROWS && sdLnRatio(rows) < CONSTANT_SD) {
      mark(columns, rows, "it is constant");
    }
  }

  private static String texture(Beside row) {
    return row.cheap.sample().soil().texture().name();
  }

  private static double sdLnRatio(List<Beside> rows) {
    double mean = rows.stream().mapToDouble(Beside::lnRatio).average().orElseThrow();
    double squares = rows.stream().mapToDouble(r -> Conversion.square(r.lnRatio() - mean)).sum();
    return Math.sqrt(squares / (rows.size() - 1));
  }

  /** The published relation that gives every one of these rows; empty text if none does. */
  private static String published(MethodKey method, List<Beside> rows, int least) {
    if (rows.size() < least) {
      return "";
    }
    int decimals = rows.stream().mapToInt(r -> decimals(r.pasteEc())).max().orElse(0);
    double rounding = 0.5 * Math.pow(10, -decimals);
    if (chance(rows, rounding) > BY_CHANCE) {
      return "";
    }
    List<EceRelation> candidates = new ArrayList<>(Relations.of(method.method()));
    candidates.add(new DefaultMultiplier(method, false));
    for (EceRelation relation : candidates) {
      for (boolean textureAlone : new boolean[] {false, true}) {
        if (rows.stream().allMatch(row -> gives(relation, row, textureAlone, rounding))) {
          return relation.name();
        }
      }
    }
    return "";
  }

  /**
   * About how often measured readings would all lie so near a relation that the first of them fits:
   * each further one within its tolerance, its own error of 0.16 being spread evenly about it.
   */
  private static double chance(List<Beside> rows, double rounding) {
    double chance = 1;
    for (Beside row : rows.subList(1, rows.size())) {
      chance *= Math.min(1, 5 * (NEAR + rounding / row.pasteEc()));
    }
    return chance;
  }

  private static int decimals(double printed) {
    return Math.min(4, Math.max(0, BigDecimal.valueOf(printed).stripTrailingZeros().scale()));
  }

  private static boolean gives(
      EceRelation relation, Beside row, boolean textureAlone, double rounding) {
    Soil soil = row.cheap.sample().soil();
    Soil asked =
        textureAlone ? Soil.unknown().withTexture(soil.texture(), OptionalDouble.empty()) : soil;
    return relation.convert(row.cheapEc(), asked) instanceof Outcome.Ece ece
        && Math.abs(ece.dSPerM() - row.pasteEc()) <= NEAR * row.pasteEc() + rounding;
  }

  private void mark(Columns columns, Collection<Beside> rows, String why) {
    rows.forEach(row -> calculated.add(row.paste));
    Sample first = rows.iterator().next().paste.sample();
    findings.add(
        new Finding(
            Code.CALCULATED_ECE,
            new Place.Laboratory(first.source().file(), columns.pasteLaboratory, "", fields(rows)),
            rows.size()
                + " paste readings stand in one ratio to the "
                + columns.method.label()
                + " readings: "
                + why,
            "taken as calculated, not measured: neither pairs nor paste readings; ask the laboratory"));
  }

  private static Set<String> fields(Collection<Beside> rows) {
    return rows.stream().map(row -> row.paste.sample().field()).collect(Collectors.toSet());
  }
}
