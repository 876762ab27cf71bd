package fieldsalt.read;

import java.util.Optional;

/**
 * A sample whose place is still in the file's coordinates.
 *
 * @param fieldSaid the field that the row names, or empty text
 */
record SampleRow(Sample sample, Optional<Spot> spot, String fieldSaid) {
  SampleRow at(Optional<Spot> other) {
    return new SampleRow(sample, other, fieldSaid);
  }
}
