package fieldsalt.plan;

import fieldsalt.geo.PlaceM;
import fieldsalt.plan.zone.GypsumPlan.Advice;
import fieldsalt.plan.zone.ZonePlan;
import fieldsalt.read.sample.Sample;
import fieldsalt.surface.next.Proposal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What the plan asks the soil for before it can say an amount: sodium, or CEC, of stored samples of
 * a zone. Each is worth its zone's share of the hectares over the number of samples asked for.
 */
public final class SoilAsks {
  private SoilAsks() {}

  /**
   * The measurements asked for.
   *
   * @param samples by field
   */
  public static List<Proposal> of(RanchPlan plan, Map<String, List<Sample>> samples) {
    List<ZonePlan> zones = plan.zones();
    double hectares = zones.stream().mapToDouble(z -> z.zone().areaHa()).sum();
    List<Proposal> asks = new ArrayList<>();
    for (ZonePlan zone : zones) {
      if (zone.gypsum().isUnknown()) {
        String field = zone.zone().field();
        Proposal.Kind kind =
            zone.gypsum().advice() == Advice.MEASURE_CEC ? Proposal.Kind.CEC : Proposal.Kind.SODIUM;
        List<String> sites = zone.gypsum().sitesToMeasure();
        double worth = zone.zone().areaHa() / hectares / Math.max(1, sites.size());
        for (String id : sites) {
          place(id, samples.getOrDefault(field, List.of()))
              .ifPresent(p -> asks.add(new Proposal(kind, id, field, p, 0, worth, 0, 0)));
        }
      }
    }
    return asks;
  }

  private static Optional<PlaceM> place(String id, List<Sample> samples) {
    return samples.stream()
        .filter(s -> s.id().equals(id))
        .flatMap(s -> s.place().stream())
        .findFirst();
  }
}
