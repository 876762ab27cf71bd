package fieldsalt.basis.site;

/** The scale on which a property is mapped: its natural logarithm, or as it is. */
public enum Scale {
  LOG,
  NATURAL
}
