package fieldsalt.pipeline;

import fieldsalt.basis.setting.BasisSettings;
import fieldsalt.basis.setting.ConversionErrors;
import fieldsalt.basis.setting.LaboratoryErrors;
import fieldsalt.basis.setting.ReadingError;
import fieldsalt.basis.setting.SpecialSoilErrors;
import fieldsalt.read.job.JobDocument;

/** The sizes of errors, from the keys {@code errors} of a job. */
final class ErrorSettings {
  private final JobDocument job;

  private ErrorSettings(JobDocument job) {
    this.job = job;
  }

  static BasisSettings of(JobDocument job, BasisSettings settings) {
    ErrorSettings errors = new ErrorSettings(job);
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
