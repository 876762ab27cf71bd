package fieldsalt.zones.lattice;

/**
 * One part of a field on a lattice.
 *
 * @param value at each node, ln ECe (or the value itself on a natural scale); known everywhere
 * @param second value at each node, empty without a second criterion
 * @param inside whether the node lies in the part
 * @param given class that the surface gives
 * @param klass class now; changed by cleaning
 */
public record Nodes(
    Lattice lattice,
    Cutter cutter,
    double[] value,
    double[] second,
    boolean[] inside,
    int[] given,
    int[] klass) {

  /** Nearest that a class line comes to a node, in steps. */
  private static final double CLOSEST = 0.02;

  public static Nodes of(
      Lattice lattice, Cutter cutter, double[] value, double[] second, boolean[] inside) {
    int[] given = new int[lattice.nodes()];
    for (int i = 0; i < given.length; i++) {
      given[i] = cutter.classOf(value[i], second.length == 0 ? 0 : second[i]);
    }
    return new Nodes(lattice, cutter, value, second, inside, given, given.clone());
  }

  /**
   * Where the line between two neighbouring nodes of different class runs, 0 at a to 1 at b; NaN if
   * no class limit of the surface lies between them.
   */
  public double crossing(int a, int b) {
    double t =
        Cutter.between(
            cutter.breaks(), value[a], value[b], cutter.first(klass[a]), cutter.first(klass[b]));
    if (Double.isNaN(t) && second.length > 0) {
      t =
          Cutter.between(
              cutter.secondBreaks(),
              second[a],
              second[b],
              cutter.second(klass[a]),
              cutter.second(klass[b]));
    }
    return Double.isNaN(t) ? t : Math.max(CLOSEST, Math.min(1 - CLOSEST, t));
  }

  /** As {@code crossing}, the middle where no class limit lies between them. */
  public double where(int a, int b) {
    double t = crossing(a, b);
    return Double.isNaN(t) ? 0.5 : t;
  }

  /**
   * Whether the corners a and c of a square are joined through its middle, where a and c are of one
   * class and b and d of another one: as the middle value says, else the lower class.
   */
  public boolean joinsAc(int a, int b, int c, int d) {
    double middle = (value[a] + value[b] + value[c] + value[d]) / 4;
    int there =
        cutter.classOf(
            middle, second.length == 0 ? 0 : (second[a] + second[b] + second[c] + second[d]) / 4);
    return there == klass[a] || (there != klass[b] && klass[a] < klass[b]);
  }
}
