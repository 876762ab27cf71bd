package fieldsalt.quantity;

/** What the probe stood in: a filtered extract, the slurry itself, or nobody said. */
public enum ReadingKind {
  EXTRACT,
  SLURRY,
  UNKNOWN
}
