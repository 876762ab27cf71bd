package fieldsalt.read.sample;

import java.util.Optional;

/**
 * A sample whose place is still in the file's coordinates.
 *
 * @param fieldSaid the field that the row names, or empty text
 */
public record UnplacedSample(Sample sample, Optional<Spot> spot, String fieldSaid) {
  public UnplacedSample at(Optional<Spot> other) {
    return new UnplacedSample(sample, other, fieldSaid);
  }
}
