package fieldsalt.plan.zone;

/** What is the matter with a zone, for its crop. */
public enum Situation {
  SALINE("salty, not sodic"),
  SALINE_SODIUM_UNKNOWN("salty, sodium not measured"),
  SALINE_SODIC("salty and sodic"),
  SODIC("sodic"),
  FINE("nothing asks for treatment");

  private final String label;

  Situation(String label) {
    this.label = label;
  }

  public String label() {
    return label;
  }

  public boolean isSodic() {
    return this == SALINE_SODIC || this == SODIC;
  }
}
