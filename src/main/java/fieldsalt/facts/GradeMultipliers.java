package fieldsalt.facts;

import fieldsalt.quantity.Texture;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** Multipliers of EC1:5 by field texture grade, after Slavich &amp; Petterson 1993. */
public final class GradeMultipliers {
  private static final Map<Texture, Multipliers.Multiplier> ROWS =
      FactTable.rows("slavich_petterson_1993_grades.csv").stream()
          .collect(
              Collectors.toUnmodifiableMap(
                  row -> Texture.valueOf(row.get("texture")),
                  row ->
                      new Multipliers.Multiplier(
                          Double.parseDouble(row.get("multiplier")),
                          Double.parseDouble(row.get("sd_ln")),
                          row.get("confidence"),
                          "Slavich & Petterson 1993, by texture grade")));

  private GradeMultipliers() {}

  /** The multiplier of a grade; empty for group words and unknown texture. */
  public static Optional<Multipliers.Multiplier> of(Texture grade) {
    return Optional.ofNullable(ROWS.get(grade));
  }
}
