package fieldsalt.read.site;

import fieldsalt.finding.Code;
import fieldsalt.quantity.DepthRange;
import fieldsalt.read.file.Notes;
import fieldsalt.read.sample.Sample;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * Rows of one site that say one thing in two ways are brought together: depths that differ by up to
 * 2 cm are one depth (0-12 in and 0-30 cm), and a row without a date belongs to the one dated visit
 * of its site. Where there are several visits it stays by itself, with a finding.
 */
public final class MatchedRows {
  /** Depths that differ by no more than this are one. */
  private static final double ONE_DEPTH_CM = 2;

  private final Map<Double, Double> depths = new HashMap<>();
  private final Notes notes;

  private MatchedRows(Notes notes) {
    this.notes = notes;
  }

  /** The samples, in their order. */
  public static List<Sample> of(List<Sample> samples, Notes notes) {
    MatchedRows matched = new MatchedRows(notes);
    matched.matchDepths(samples);
    List<Sample> same = samples.stream().map(matched::atOneDepth).toList();
    Map<String, List<Sample>> bySite =
        same.stream().collect(Collectors.groupingBy(s -> s.field() + "\n" + s.id()));
    return same.stream()
        .map(
            s -> s.date().isPresent() ? s : matched.dated(s, bySite.get(s.field() + "\n" + s.id())))
        .toList();
  }

  /** Each depth becomes the commonest one within 2 cm; of equally common ones the shallower. */
  private void matchDepths(List<Sample> samples) {
    Map<Double, Integer> count = new TreeMap<>();
    for (Sample s : samples) {
      count.merge(s.depth().topCm(), 1, Integer::sum);
      count.merge(s.depth().bottomCm(), 1, Integer::sum);
    }
    List<Double> commonest = new ArrayList<>(count.keySet());
    commonest.sort((a, b) -> Integer.compare(count.get(b), count.get(a)));
    TreeSet<Double> kept = new TreeSet<>();
    for (double depth : commonest) {
      Double near = nearest(kept, depth);
      boolean one = near != null && Math.abs(near - depth) <= ONE_DEPTH_CM + 1e-9;
      depths.put(depth, one ? near : depth);
      if (!one) {
        kept.add(depth);
      }
    }
  }

  private static Double nearest(NavigableSet<Double> kept, double depth) {
    Double below = kept.floor(depth);
    Double above = kept.ceiling(depth);
    if (below == null || above == null) {
      return below == null ? above : below;
    }
    return depth - below <= above - depth ? below : above;
  }

  /** A layer thinner than 4 cm keeps its own depths: they tell it from its neighbours. */
  private Sample atOneDepth(Sample sample) {
    DepthRange given = sample.depth();
    double top = depths.get(given.topCm());
    double bottom = depths.get(given.bottomCm());
    boolean same = top == given.topCm() && bottom == given.bottomCm();
    return same || given.thicknessCm() < 2 * ONE_DEPTH_CM || bottom - top < ONE_DEPTH_CM
        ? sample
        : sample.withDepth(new DepthRange(top, bottom));
  }

  private Sample dated(Sample undated, List<Sample> site) {
    List<LocalDate> dates =
        site.stream().flatMap(s -> s.date().stream()).distinct().sorted().toList();
    if (dates.size() == 1) {
      return undated.withDate(Optional.of(dates.get(0)));
    }
    if (dates.size() > 1) {
      notes.row(
          Code.UNDATED_ROW,
          undated.source(),
          "no date, where '" + undated.id() + "' was sampled on " + dates.size() + " dates",
          "kept as a visit of its own; give its date");
    }
    return undated;
  }
}
