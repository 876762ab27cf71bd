package fieldsalt.plan.order;

import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.plan.setting.PlanSettings;
import fieldsalt.plan.soil.FieldEvidence;
import fieldsalt.plan.soil.FieldGround;
import fieldsalt.plan.soil.FieldSoil;
import fieldsalt.plan.zone.Draft;
import fieldsalt.plan.zone.Draft.Reason;
import java.util.ArrayList;
import java.util.List;

/** Finds what undermines the plan of a field. */
public final class DraftMarks {
  private DraftMarks() {}

  public static Draft of(FieldGround field, boolean treats, PlanSettings settings) {
    List<Reason> reasons = new ArrayList<>();
    FieldEvidence evidence = field.evidence();
    if (evidence.sites() < FieldEvidence.FEW_SITES) {
      reasons.add(
          new Reason(
              Code.DRAFT_FEW_SITES,
              "only " + evidence.sites() + " sites stand behind the map",
              "sample at least " + FieldEvidence.FEW_SITES + " sites"));
    }
    if (evidence.noBetterThanMean()) {
      reasons.add(
          new Reason(
              Code.DRAFT_NO_BETTER_THAN_MEAN,
              "the map is no better than the field's mean",
              "take the samples of the list for the next round"));
    }
    if (evidence.topsoilOnly()) {
      reasons.add(
          new Reason(
              Code.DRAFT_TOPSOIL_ONLY,
              "topsoil only: under half of the root zone was sampled",
              "sample the whole root zone"));
    }
    addSoil(reasons, field);
    if (treats && !settings.ground().isProved()) {
      reasons.add(drainage(settings));
    }
    for (Finding finding : evidence.undermining()) {
      reasons.add(new Reason(draft(finding.code()), finding.found(), lift(finding)));
    }
    return new Draft(reasons);
  }

  private static Code draft(Code undermining) {
    return switch (undermining) {
      case DEFAULT_VARIOGRAM -> Code.DRAFT_DEFAULT_VARIOGRAM;
      case CALCULATED_ECE -> Code.DRAFT_CALCULATED_ECE;
      case GYPSUM_SUSPECTED -> Code.DRAFT_GYPSUM_SUSPECTED;
      default -> throw new IllegalArgumentException("does not make a draft: " + undermining);
    };
  }

  /** What a person can do about a finding; most say it themselves. */
  private static String lift(Finding finding) {
    return finding.code() == Code.DEFAULT_VARIOGRAM
        ? "sample at least " + FieldEvidence.FEW_SITES + " places on the ranch"
        : finding.done();
  }

  private static void addSoil(List<Reason> reasons, FieldGround field) {
    FieldSoil soil = field.soil();
    if (soil.isGypsiferous() || soil.gypsumSuspected()) {
      reasons.add(
          new Reason(
              Code.DRAFT_GYPSUM_PRESENT,
              soil.isGypsiferous()
                  ? "the soil holds gypsum"
                  : "the soil may hold gypsum: calcium and sulfate of the paste are both high",
              soil.isGypsiferous()
                  ? "confirm ECe by saturated paste and the gypsum by the laboratory"
                  : "have the laboratory measure gypsum"));
    }
    if (field.evidence().sodiumUncorrected()) {
      reasons.add(
          new Reason(
              Code.DRAFT_SODIUM_UNCORRECTED,
              "the sodium figures are not those of the paste or of the exchange alone",
              "measure SAR of the saturated paste"));
    }
  }

  private static Reason drainage(PlanSettings settings) {
    boolean table = settings.ground().hasShallowTable();
    return new Reason(
        table ? Code.DRAFT_SHALLOW_WATER_TABLE : Code.DRAFT_DRAINAGE_NOT_PROVED,
        table
            ? "a water table nearer than 150 cm"
            : "drainage is "
                + settings.ground().drainage().name().toLowerCase(java.util.Locale.ROOT),
        "prove that water can leave (dig or auger to 2 m), then set drainage: good");
  }
}
