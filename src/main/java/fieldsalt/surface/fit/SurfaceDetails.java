package fieldsalt.surface.fit;

import fieldsalt.geo.PlaceM;
import fieldsalt.surface.covariance.Anisotropy;
import java.util.List;
import java.util.Optional;

/**
 * What a geostatistician asks for.
 *
 * @param sampleVariogram for the plot, on the scale of the fit, known errors taken off
 * @param anisotropy of the fitted model; ratio 1 is isotropic
 * @param influential sites on which the fit hangs: without one of them sill or range changes by
 *     more than half
 * @param validation of the chosen method: on the scale of the fit, then in the property's unit
 * @param sites each site as the chosen method predicts it from all others
 * @param laboratories each laboratory's readings predicted from those of the others
 * @param drift what was tried as drift, if anything was
 * @param doubtful sites that are misread or a spot too small for the map, the most doubtful first
 */
public record SurfaceDetails(
    List<Lag> sampleVariogram,
    Anisotropy anisotropy,
    List<Influence> influential,
    List<Validation> validation,
    List<SiteCheck> sites,
    List<LaboratoryCheck> laboratories,
    Optional<DriftCheck> drift,
    List<Doubtful> doubtful) {
  public SurfaceDetails {
    sampleVariogram = List.copyOf(sampleVariogram);
    influential = List.copyOf(influential);
    validation = List.copyOf(validation);
    sites = List.copyOf(sites);
    laboratories = List.copyOf(laboratories);
    doubtful = List.copyOf(doubtful);
  }

  /**
   * A site in doubt, values in the property's unit.
   *
   * @param value read there
   * @param low 5 % quantile of what the other sites suggest that it should read
   * @param suggested its median
   * @param high its 95 % quantile
   * @param chance that it is misread or a spot too small for the map
   * @param supported a neighbour is as far off in the same direction: both count whole
   */
  public record Doubtful(
      String siteId,
      String field,
      PlaceM place,
      double value,
      double low,
      double suggested,
      double high,
      double chance,
      boolean supported) {}

  /** Nothing known. */
  public static SurfaceDetails none() {
    return new SurfaceDetails(
        List.of(),
        Anisotropy.NONE,
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        Optional.empty(),
        List.of());
  }

  /**
   * One lag of the sample variogram.
   *
   * @param distanceM mean distance of its pairs
   * @param matheron half the mean squared difference, less the known errors' part
   * @param cressieHawkins the robust estimate (Cressie and Hawkins 1980), errors still in it
   */
  public record Lag(int pairs, double distanceM, double matheron, double cressieHawkins) {}

  /**
   * A site with a large standardised error, and the fit without it.
   *
   * @param standardisedError of the site predicted from all others
   */
  public record Influence(
      String siteId,
      double standardisedError,
      double sillWithout,
      double rangeWithoutM,
      double sill,
      double rangeM) {}

  /** A reading and its prediction from all other sites, in the property's unit. */
  public record SiteCheck(
      String siteId, String field, double value, double predicted, double standardisedError) {}

  /**
   * Readings of one laboratory predicted from all other rows.
   *
   * @param rows how many could be predicted
   * @param bias mean error on the scale of the fit
   * @param biasError standard error that the model gives to that bias: beyond 2 of it the
   *     laboratory does not fit in
   */
  public record LaboratoryCheck(
      String laboratory, int rows, double bias, double biasError, double rmse, double coverage90) {}

  /**
   * A drift that was tried.
   *
   * @param names of the drifts
   * @param coefficients per unit of each drift
   * @param standardErrors of the coefficients
   * @param keepsSign whether each coefficient keeps its sign whatever field is left out
   * @param verdict one plain sentence
   */
  public record DriftCheck(
      List<String> names,
      double[] coefficients,
      double[] standardErrors,
      boolean keepsSign,
      String verdict) {
    public DriftCheck {
      names = List.copyOf(names);
    }
  }
}
