package fieldsalt.surface.next;

import fieldsalt.geo.PlaceM;

/**
 * One thing to measure next.
 *
 * @param siteId of the stored sample to read again as saturated paste; empty for a new site
 * @param gain by how much it lowers the sum of the zones' error variances, those before it done
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
    double ranchErrorAfter,
    double worstZoneErrorAfter) {

  /** What is to be done. */
  public enum Kind {
    /** The stored sample of a site in doubt, read again as it was. */
    DOUBTFUL_AGAIN,
    /** The stored sample of a known site, read directly (saturated paste). */
    PASTE_RERUN,
    /** A new place, sampled and read directly. */
    NEW_SITE
  }
}
