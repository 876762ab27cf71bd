package fieldsalt.read.sample;

/** Whether two readings of one place come from one bag (split) or from another core. */
public enum PairKind {
  SPLIT,
  CORE
}
