package fieldsalt.finding;

/**
 * Something about the input or the result that a person must know, counted under a stable code.
 *
 * @param code stable, short, lower case with hyphens, e.g. {@code unit-slip}
 * @param where file and row, sample id, field or zone
 * @param found what stands there, with its unit
 * @param done what was done about it, and what would mend it
 */
public record Finding(String code, String where, String found, String done) {
  public Finding {
    if (code.isBlank()) {
      throw new IllegalArgumentException("a finding needs a code");
    }
  }
}
