package fieldsalt.surface.choice;

import fieldsalt.surface.fit.Doubts;
import fieldsalt.surface.fit.Modelled;
import fieldsalt.surface.fit.SurfaceMethod;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Fields that are mapped by one method, with what was tried in them.
 *
 * @param fields that are mapped
 * @param candidates what was tried, judged at the sites of these fields
 * @param modelled the covariance models of the method chosen
 * @param doubts sites in doubt among theirs
 */
public record FittedGroup(
    Set<String> fields,
    Choice choice,
    List<Tried> candidates,
    Modelled modelled,
    List<Doubts.Site> doubts) {
  public FittedGroup {
    fields = Set.copyOf(fields);
    candidates = List.copyOf(candidates);
    doubts = List.copyOf(doubts);
  }

  /**
   * The fields that a drift is to steer; empty where it is not fit to, or does not predict their
   * unseen sites clearly better than kriging.
   *
   * @param plain mean, kriging and inverse distance without drift
   * @param asked AUTO, or the method that the user wants
   */
  public static Optional<FittedGroup> steered(
      DriftTrial trial, List<Tried> plain, SurfaceMethod asked) {
    List<Tried> candidates = trial.candidates(plain);
    Choice choice =
        asked == SurfaceMethod.DRIFT
            ? Choice.asked(trial.tried())
            : Choice.among(
                candidates.stream().filter(t -> t.method() != SurfaceMethod.IDW).toList());
    boolean wanted =
        asked == SurfaceMethod.DRIFT || (asked == SurfaceMethod.AUTO && trial.allowed());
    return wanted && choice.chosen().method() == SurfaceMethod.DRIFT
        ? Optional.of(
            new FittedGroup(trial.fields(), choice, candidates, trial.modelled(), trial.doubts()))
        : Optional.empty();
  }

  /** The method's positions of a site in doubt as those of {@link Tried#crpsBySite}. */
  Set<String> doubtful() {
    return doubts.stream()
        .map(d -> Tried.key(modelled.likelihood().data(), d.part(), d.site()))
        .collect(java.util.stream.Collectors.toSet());
  }
}
