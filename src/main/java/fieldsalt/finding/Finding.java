package fieldsalt.finding;

/**
 * Something about the input or the result that a person must know, counted under a stable code.
 *
 * @param place what it is about
 * @param found what stands there, with its unit
 * @param done what was done about it, and what would mend it
 */
public record Finding(Code code, Place place, String found, String done) {

  /** The place in words. */
  public String where() {
    return PlaceWords.of(place);
  }
}
