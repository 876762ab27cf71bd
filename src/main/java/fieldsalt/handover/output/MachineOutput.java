package fieldsalt.handover.output;

import fieldsalt.handover.input.MachineJob;
import fieldsalt.plan.RanchPlan;
import fieldsalt.plan.zone.ZonePlan;
import fieldsalt.read.job.JobDocument;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/** What the spreader is told of a plan. */
public final class MachineOutput {
  private MachineOutput() {}

  /** Rates of one pass: a split rate is driven as many times as the plan says. */
  public static MachineJob of(RanchPlan plan, JobDocument job) {
    Map<String, Double> rates = new LinkedHashMap<>();
    Map<String, Integer> passes = new LinkedHashMap<>();
    boolean drafts = job.flag("machine.drafts");
    Set<String> draftFields = new TreeSet<>();
    for (ZonePlan zone : plan.zones()) {
      if (zone.draft().isDraft()) {
        draftFields.add(zone.zone().field());
      }
      if (zone.goesToMachine(drafts)) {
        rates.put(zone.zone().name(), zone.productTPerHa() / zone.passes());
        passes.put(zone.zone().name(), zone.passes());
      }
    }
    return new MachineJob(
        job.word("ranch"),
        job.text("machine.product").orElse("gypsum"),
        job.amount("machine.swath-m"),
        Integer.parseInt(job.word("machine.version")),
        rates,
        passes,
        draftFields);
  }
}
