package fieldsalt.basis.layer;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;

/** The shared errors that rows have in common, each with prior variance 1, by name and position. */
public final class Offsets {
  private final List<String> names;
  private final Map<String, Integer> index = new TreeMap<>();

  public Offsets(Collection<LayerReading> readings) {
    TreeSet<String> sorted = new TreeSet<>();
    readings.forEach(reading -> reading.shared().forEach(term -> sorted.add(term.offset())));
    names = List.copyOf(sorted);
    names.forEach(name -> index.put(name, index.size()));
  }

  public int count() {
    return names.size();
  }

  /** A row's sizes, in the order of the offsets; those that it does not know are left out. */
  public double[] loadings(Collection<LayerReading.Term> terms) {
    double[] h = new double[count()];
    for (LayerReading.Term term : terms) {
      Integer at = index.get(term.offset());
      if (at != null) {
        h[at] += term.sd();
      }
    }
    return h;
  }

  /** Variance of those parts that this does not know. */
  public double unknownVariance(Collection<LayerReading.Term> terms) {
    return terms.stream()
        .filter(term -> !index.containsKey(term.offset()))
        .mapToDouble(term -> term.sd() * term.sd())
        .sum();
  }
}
