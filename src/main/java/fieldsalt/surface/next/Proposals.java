package fieldsalt.surface.next;

import java.util.List;

/**
 * What to measure next, best first, and where the errors stand before anything is measured.
 *
 * @param ranchErrorNow standard error of the ranch's mean on the scale of the fit
 * @param worstZoneErrorNow the largest standard error of a zone's mean on that scale
 */
public record Proposals(double ranchErrorNow, double worstZoneErrorNow, List<Proposal> best) {
  public Proposals {
    best = List.copyOf(best);
  }
}
