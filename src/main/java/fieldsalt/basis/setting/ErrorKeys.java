package fieldsalt.basis.setting;

import fieldsalt.read.job.JobDocument;

/** The sizes of errors, from the keys {@code errors} of a job. */
final class ErrorKeys {
  private final JobDocument job;

  private ErrorKeys(JobDocument job) {
    this.job = job;
  }

  static BasisSettings of(JobDocument job, BasisSettings settings) {
    ErrorKeys errors = new ErrorKeys(job);
    return settings
        .withLaboratoryErrors(errors.laboratory())
        .withConversionErrors(errors.conversion())
        .withSpecialSoils(errors.specialSoils());
  }

  private LaboratoryErrors laboratory() {
    return new LaboratoryErrors(
        reading("paste"),
        reading("1-5"),
        reading("dilute"),
        reading("slurry"),
        reading("sar"),
        reading("cec"));
  }

  private ReadingError reading(String kind) {
    return new ReadingError(size(kind + "-shared"), size(kind + "-own"));
  }

  private ConversionErrors conversion() {
    return new ConversionErrors(
        job.number("errors", "shared-share").orElse(ConversionErrors.defaults().sharedShare()),
        size("low-end"),
        size("high-end"),
        size("below-detection"),
        size("above-range"),
        size("other-core"),
        size("unsampled"));
  }

  private SpecialSoilErrors specialSoils() {
    return new SpecialSoilErrors(
        size("organic"),
        size("high-sp"),
        size("sodic-carbonate"),
        size("paste-probe"),
        size("unrested-paste"),
        size("uncompensated"));
  }

  private double size(String key) {
    return job.amount("errors." + key);
  }
}
