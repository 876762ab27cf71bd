package fieldsalt.read;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Samples of one field more than 60 days apart are different campaigns: the newest is mapped, older
 * ones are never pooled silently. Common practice, no source.
 */
final class Campaigns {
  private static final int DAYS = 60;

  private Campaigns() {}

  /**
   * The samples to map.
   *
   * @param all whether the job asks for all campaigns together
   */
  static List<Sample> newest(List<Sample> samples, boolean all, Notes notes) {
    Map<String, LocalDate> newest = new TreeMap<>();
    Map<String, LocalDate> oldest = new TreeMap<>();
    for (Sample sample : samples) {
      sample
          .date()
          .ifPresent(
              date -> {
                newest.merge(sample.field(), date, (a, b) -> a.isAfter(b) ? a : b);
                oldest.merge(sample.field(), date, (a, b) -> a.isBefore(b) ? a : b);
              });
    }
    List<Sample> kept = new ArrayList<>();
    Map<String, Integer> left = new TreeMap<>();
    for (Sample sample : samples) {
      boolean old = sample.date().filter(d -> isOld(d, newest.get(sample.field()))).isPresent();
      if (old) {
        left.merge(sample.field(), 1, Integer::sum);
      }
      if (!old || all) {
        kept.add(sample);
      }
    }
    left.forEach(
        (field, count) ->
            notes.finding(
                "campaigns",
                field,
                "samples from "
                    + oldest.get(field)
                    + " to "
                    + newest.get(field)
                    + ", more than "
                    + DAYS
                    + " days apart",
                all
                    ? "pooled, as campaign: all says"
                    : count
                        + " rows older than the newest campaign left out; campaign: all pools them"));
    return kept;
  }

  private static boolean isOld(LocalDate date, LocalDate newest) {
    return ChronoUnit.DAYS.between(date, newest) > DAYS;
  }
}
