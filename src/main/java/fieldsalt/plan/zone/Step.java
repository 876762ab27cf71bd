package fieldsalt.plan.zone;

/** One thing to do, in the order of work: drainage, then gypsum, then leaching. */
public enum Step {
  WATER_TABLE("look for a water table: salt is coming up from below"),
  DRAINAGE("prove that water can leave: dig or auger to 2 m"),
  MEASURE_SODIUM("measure sodium (SAR of the saturated paste)"),
  MEASURE_CEC("measure CEC, or at least the texture"),
  CONFIRM_OWN_GYPSUM("confirm the soil's own gypsum by a laboratory test"),
  TEST_STRIP("try gypsum on a strip beside an untreated one"),
  GYPSUM("spread gypsum and work it in"),
  WATER_IN("water the gypsum in and let the water drain"),
  LEACHING("leach the salt out"),
  CHANGE_CROP_OR_WATER("change the crop or the water"),
  NOTHING("nothing: check the water once a year");

  private final String label;

  Step(String label) {
    this.label = label;
  }

  public String label() {
    return label;
  }
}
