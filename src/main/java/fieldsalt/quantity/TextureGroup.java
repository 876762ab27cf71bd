package fieldsalt.quantity;

/** The three groups in which published factors come, and the case that nobody said. */
public enum TextureGroup {
  COARSE,
  MEDIUM,
  FINE,
  UNKNOWN
}
