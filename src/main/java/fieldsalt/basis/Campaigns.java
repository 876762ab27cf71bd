package fieldsalt.basis;

import fieldsalt.finding.Finding;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Keeps the newest campaign of each field: readings no older than so many days before the field's
 * newest. Readings without a date are kept.
 */
final class Campaigns {
  private final int days;
  private final boolean pool;
  private final List<Finding> findings = new ArrayList<>();

  Campaigns(BasisOptions options) {
    this.days = options.campaignDays();
    this.pool = options.poolCampaigns();
  }

  List<Finding> findings() {
    return List.copyOf(findings);
  }

  List<LayerReading> newest(List<LayerReading> readings) {
    if (pool) {
      return readings;
    }
    Map<String, LocalDate> newest = new TreeMap<>();
    for (LayerReading reading : readings) {
      reading
          .sample()
          .date()
          .ifPresent(date -> newest.merge(reading.sample().field(), date, Campaigns::later));
    }
    Map<String, List<LocalDate>> older = new TreeMap<>();
    List<LayerReading> kept = new ArrayList<>();
    for (LayerReading reading : readings) {
      Optional<LocalDate> date = reading.sample().date();
      String field = reading.sample().field();
      if (date.isPresent() && date.get().isBefore(newest.get(field).minusDays(days))) {
        older.computeIfAbsent(field, f -> new ArrayList<>()).add(date.get());
      } else {
        kept.add(reading);
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
            "several-campaigns",
            "field " + field,
            dates.size()
                + " readings are more than "
                + days
                + " days older than "
                + newest
                + " (from "
                + dates.stream().min(LocalDate::compareTo).orElseThrow()
                + ")",
            "only the newest campaign is mapped; dates are never pooled"));
  }
}
