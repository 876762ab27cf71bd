package fieldsalt.facts;

import fieldsalt.quantity.Method;
import fieldsalt.quantity.ReadingKind;
import fieldsalt.quantity.Texture;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** A table of multipliers ECe = f EC (both dS/m at 25 °C) by method, kind of reading, texture. */
public final class Multipliers {
  private final Map<Key, Multiplier> rows;

  private record Key(Method method, ReadingKind kind, Texture texture) {}

  /**
   * One multiplier.
   *
   * @param value dimensionless, greater than 0
   * @param sdLn standard deviation of its natural logarithm, conversion only
   * @param confidence S, S2, M+, M, D or CP, as the table's header explains
   * @param basis what it rests on
   */
  public record Multiplier(double value, double sdLn, String confidence, String basis) {}

  private Multipliers(Map<Key, Multiplier> rows) {
    this.rows = rows;
  }

  /** The defaults, for any region. */
  public static Multipliers defaults() {
    return read("ece_default_multipliers.csv");
  }

  /** Those for sulphate soils of the northern prairies, used before the defaults. */
  public static Multipliers prairie() {
    return read("ece_prairie_multipliers.csv");
  }

  private static Multipliers read(String resource) {
    return new Multipliers(
        FactTable.rows(resource).stream()
            .collect(Collectors.toUnmodifiableMap(Multipliers::key, Multipliers::multiplier)));
  }

  private static Key key(Map<String, String> row) {
    return new Key(
        Method.of(row.get("method")).orElseThrow(),
        ReadingKind.valueOf(row.get("reading")),
        Texture.valueOf(row.get("texture")));
  }

  private static Multiplier multiplier(Map<String, String> row) {
    return new Multiplier(
        Double.parseDouble(row.get("multiplier")),
        Double.parseDouble(row.get("sd_ln")),
        row.get("confidence"),
        row.get("basis"));
  }

  /** The first of these textures that has a row; empty if none has. */
  public Optional<Multiplier> find(Method method, ReadingKind kind, List<Texture> textures) {
    for (Texture texture : textures) {
      Multiplier row = rows.get(new Key(method, kind, texture));
      if (row != null) {
        return Optional.of(row);
      }
    }
    return Optional.empty();
  }
}
