package fieldsalt.read.sample;

import java.util.Optional;

/**
 * A sample whose place is still in the file's coordinates.
 *
 * @param namedField name of the field that the row gives, or empty text
 */
public record UnplacedSample(Sample sample, Optional<Spot> spot, String namedField) {
  public UnplacedSample at(Optional<Spot> other) {
    return new UnplacedSample(sample, other, namedField);
  }
}
