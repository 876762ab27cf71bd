package fieldsalt.basis.setting;

import fieldsalt.basis.relation.EceRelation;
import fieldsalt.basis.relation.Relations;
import fieldsalt.finding.InputProblem;
import fieldsalt.finding.InputProblem.Problem;
import fieldsalt.quantity.Method;
import fieldsalt.read.job.JobDocument;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;

/** The settings of this stage, from the keys of a job. */
public final class BasisKeys {
  private BasisKeys() {}

  /**
   * The settings that a job gives.
   *
   * @throws InputProblem naming every relation that does not exist or does not fit its method
   */
  public static BasisSettings of(JobDocument job) {
    List<Problem> problems = new ArrayList<>();
    BasisSettings settings =
        ErrorKeys.of(job, BasisSettings.defaults().withOptions(basisOptions(job)));
    for (String laboratory : job.names("laboratory")) {
      settings = settings.withLaboratory(laboratory, laboratory(job, laboratory, problems));
    }
    if (!problems.isEmpty()) {
      throw new InputProblem(problems);
    }
    return settings;
  }

  private static BasisOptions basisOptions(JobDocument job) {
    return BasisOptions.defaults()
        .withDropPairs(Set.copyOf(job.texts("drop-pairs")))
        .withConfirmed(Set.copyOf(job.names("confirm")))
        .withPoolCampaigns(job.word("campaign").equals("all"))
        .withInvertPasteProbe(job.word("paste-probe").equals("invert"))
        .withEspFromOneToFive(job.flag("esp-from-1-5"));
  }

  private static LaboratorySettings laboratory(
      JobDocument job, String name, List<Problem> problems) {
    LaboratorySettings settings = LaboratorySettings.defaults();
    for (String method : job.names("laboratory", name, "relation")) {
      Optional<EceRelation> relation = published(job, name, method, problems);
      if (relation.isPresent()) {
        settings = settings.withRelation(Method.of(method).orElseThrow(), relation.get());
      }
    }
    for (String method : job.names("laboratory", name, "factor")) {
      Optional<EceRelation> relation = own(job, name, method, problems);
      if (relation.isPresent()) {
        settings = settings.withRelation(Method.of(method).orElseThrow(), relation.get());
      }
    }
    OptionalDouble sdLn = job.number("laboratory", name, "sd-ln");
    settings = sdLn.isPresent() ? settings.withSdLn(sdLn.getAsDouble()) : settings;
    return settings.withRegion(job.text("laboratory", name, "region").orElse(""));
  }

  private static Optional<EceRelation> published(
      JobDocument job, String laboratory, String method, List<Problem> problems) {
    String wanted = job.text("laboratory", laboratory, "relation", method).orElseThrow();
    Method of = Method.of(method).orElseThrow();
    Optional<EceRelation> relation = Relations.named(wanted, of);
    if (relation.isEmpty()) {
      problems.add(
          new Problem(
              job.place("laboratory", laboratory, "relation", method),
              "\"" + wanted + "\"",
              "a published relation for " + method,
              "One of: "
                  + Relations.of(of).stream()
                      .map(EceRelation::name)
                      .distinct()
                      .collect(Collectors.joining(", "))
                  + "."));
    }
    return relation;
  }

  private static Optional<EceRelation> own(
      JobDocument job, String laboratory, String method, List<Problem> problems) {
    double factor = job.number("laboratory", laboratory, "factor", method).orElseThrow();
    double intercept = job.number("laboratory", laboratory, "intercept", method).orElse(0);
    OptionalDouble sdLn = job.number("laboratory", laboratory, "factor-sd-ln", method);
    if (sdLn.isEmpty()) {
      problems.add(
          new Problem(
              job.place("laboratory", laboratory, "factor", method),
              "a factor of your own without its error",
              "laboratory." + laboratory + ".factor-sd-ln." + method,
              "Give the standard deviation of its logarithm, e.g. 0.15 for about 15 %."));
      return Optional.empty();
    }
    return Optional.of(
        Relations.own(Method.of(method).orElseThrow(), factor, intercept, sdLn.getAsDouble()));
  }
}
