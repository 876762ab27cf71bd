package fieldsalt.basis.layer;

import fieldsalt.basis.setting.BasisOptions;
import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.finding.Place;
import fieldsalt.read.sample.Sample;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;

/**
 * Keeps the newest campaign of each field: readings no older than so many days before the field's
 * newest. Readings without a date are kept.
 */
public final class Campaigns {
  private final int days;
  private final boolean pool;
  private final List<Finding> findings = new ArrayList<>();

  public Campaigns(BasisOptions options) {
    this.days = options.campaignDays();
    this.pool = options.poolCampaigns();
  }

  public List<Finding> findings() {
    return List.copyOf(findings);
  }

  /**
   * Rows of the newest campaign of each field.
   *
   * @param rows anything that came from samples
   * @param origin the sample of a row
   */
  public <T> List<T> newest(List<T> rows, Function<T, Sample> origin) {
    if (pool) {
      return rows;
    }
    Map<String, LocalDate> newest = new TreeMap<>();
    for (T row : rows) {
      Sample sample = origin.apply(row);
      sample.date().ifPresent(date -> newest.merge(sample.field(), date, Campaigns::later));
    }
    Map<String, List<LocalDate>> older = new TreeMap<>();
    List<T> kept = new ArrayList<>();
    for (T row : rows) {
      Optional<LocalDate> date = origin.apply(row).date();
      String field = origin.apply(row).field();
      if (date.isPresent() && date.get().isBefore(newest.get(field).minusDays(days))) {
        older.computeIfAbsent(field, f -> new ArrayList<>()).add(date.get());
      } else {
        kept.add(row);
      }
    }
    older.forEach((field, dates) -> report(field, dates, newest.get(field)));
    return kept;
  }

  private static LocalDate later(LocalDate a, LocalDate b) {
    return a.isAfter(b) ? a : b;
  }

  private void report(String field, List<LocalDate> dates, LocalDate newest) {
    findings.add(
        new Finding(
            Code.SEVERAL_CAMPAIGNS,
            Place.field(field),
            dates.size()
                + " readings are more than "
                + days
                + " days older than "
                + newest
                + " (from "
                + dates.stream().min(LocalDate::compareTo).orElseThrow()
                + ")",
            "only the newest campaign is mapped; to pool all of them say campaign: all in the job"));
  }
}
