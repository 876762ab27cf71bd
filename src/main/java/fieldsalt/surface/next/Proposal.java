package fieldsalt.surface.next;

import fieldsalt.geo.PlaceM;

/**
 * One thing to measure next.
 *
 * @param siteId of the stored sample to read again as saturated paste; empty for a new site
 * @param gain by how much it lowers the sum over zones of hectares times error variance, those
 *     before it done
 * @param worth share of what is not yet known, weighted by hectares, that it settles: of the zones'
 *     error variance, or of the ground whose plan waits for it; NaN for a reading in doubt, which
 *     comes first whatever it is worth
 * @param ranchErrorAfter standard error of the ranch's mean on the scale of the fit (for ln ECe
 *     about the relative error) once it and those before it are measured
 * @param worstZoneErrorAfter the largest standard error of a zone's mean, likewise
 */
public record Proposal(
    Kind kind,
    String siteId,
    String field,
    PlaceM place,
    double gain,
    double worth,
    double ranchErrorAfter,
    double worstZoneErrorAfter) {

  /** The same among proposals of other fields. */
  Proposal withErrors(double ranch, double worst) {
    return new Proposal(kind, siteId, field, place, gain, worth, ranch, worst);
  }

  /** What is to be done. */
  public enum Kind {
    /** The stored sample of a site in doubt, read again as it was. */
    DOUBTFUL_AGAIN,
    /** The stored sample of a known site, read directly (saturated paste). */
    PASTE_RERUN,
    /** A new place, sampled and read directly. */
    NEW_SITE,
    /** Sodium of a stored sample: the plan of its zone waits for it. */
    SODIUM,
    /** Cation exchange capacity, or at least the texture, of a stored sample: likewise. */
    CEC
  }
}
