package fieldsalt.zones.lattice;

import java.util.Arrays;
import java.util.PriorityQueue;

/**
 * Regions that touch: those that must go are joined to neighbours, the smallest first. Regions of
 * one class that come to touch become one. The outcome does not depend on the order in which
 * regions or contacts were added but for exact ties, which go to the lower number.
 */
public final class RegionGraph {
  /** Which neighbour a region joins. */
  public enum Choice {
    CLOSEST_VALUE,
    LONGEST_CONTACT
  }

  private final Cutter cutter;
  private final UnionFind sets;
  private final int[] klass;
  private final double[] area;
  private final double[] valueSum;
  private final double[] secondSum;
  private final boolean[] thin;
  private final int[] head;
  private final int[] tail;
  private int[] to = new int[1024];
  private int[] next = new int[1024];
  private double[] length = new double[1024];
  private int links;
  private final double[] contact;
  private final PriorityQueue<Entry> queue = new PriorityQueue<>();

  private record Entry(double area, int region) implements Comparable<Entry> {
    @Override
    public int compareTo(Entry other) {
      int byArea = Double.compare(area, other.area);
      return byArea != 0 ? byArea : Integer.compare(region, other.region);
    }
  }

  /**
   * @param cutter tells the class by the second criterion: by value a region joins one of its own
   *     there where it can
   */
  public RegionGraph(int regions, Cutter cutter) {
    this.cutter = cutter;
    sets = new UnionFind(regions);
    klass = new int[regions];
    area = new double[regions];
    valueSum = new double[regions];
    secondSum = new double[regions];
    thin = new boolean[regions];
    head = new int[regions];
    tail = new int[regions];
    Arrays.fill(head, -1);
    contact = new double[regions];
  }

  public void region(int id, int itsClass, boolean isThin) {
    klass[id] = itsClass;
    thin[id] = isThin;
  }

  /** Adds a bit of ground to a region, with its value and its second value on a like scale. */
  public void ground(int id, double bitArea, double value, double second) {
    area[id] += bitArea;
    valueSum[id] += bitArea * value;
    secondSum[id] += bitArea * second;
  }

  public void touch(int a, int b, double contactLength) {
    link(a, b, contactLength);
    link(b, a, contactLength);
  }

  private void link(int from, int other, double contactLength) {
    if (links == to.length) {
      to = Arrays.copyOf(to, links * 2);
      next = Arrays.copyOf(next, links * 2);
      length = Arrays.copyOf(length, links * 2);
    }
    to[links] = other;
    length[links] = contactLength;
    next[links] = -1;
    if (head[from] < 0) {
      head[from] = links;
    } else {
      next[tail[from]] = links;
    }
    tail[from] = links++;
  }

  /**
   * Joins every thin region, and every region smaller than the limit, to a neighbour, as far as
   * there is one. A thin region does not join one of its own class: it was cut from it.
   *
   * @return how many were joined
   */
  public int merge(double minArea, Choice choice) {
    for (int i = 0; i < area.length; i++) {
      queue.add(new Entry(area[i], i));
    }
    int merged = 0;
    while (!queue.isEmpty()) {
      Entry entry = queue.poll();
      if (isCurrent(entry) && (thin[entry.region] || entry.area < minArea)) {
        merged += joinToNeighbour(entry.region, choice) ? 1 : 0;
      }
    }
    return merged;
  }

  /** Makes one region of those of one class that touch. */
  public void joinAlike() {
    for (int from = 0; from < head.length; from++) {
      for (int l = head[from]; l >= 0; l = next[l]) {
        if (klass[to[l]] == klass[from]) {
          unite(from, to[l]);
        }
      }
    }
  }

  private boolean isCurrent(Entry entry) {
    return sets.find(entry.region) == entry.region && area[entry.region] == entry.area;
  }

  private boolean joinToNeighbour(int region, Choice choice) {
    int[] neighbours = neighbours(region);
    int best = -1;
    for (int other : neighbours) {
      boolean allowed = klass[other] != klass[region];
      if (allowed && (best < 0 || isBetter(other, best, region, choice))) {
        best = other;
      }
    }
    if (best < 0) {
      thin[region] = false;
      return false;
    }
    join(region, best, neighbours);
    return true;
  }

  private boolean isBetter(int a, int b, int region, Choice choice) {
    if (choice == Choice.LONGEST_CONTACT) {
      return contact[a] > contact[b];
    }
    boolean alike = isAlike(a, region);
    return alike == isAlike(b, region) ? apart(a, region) < apart(b, region) : alike;
  }

  private boolean isAlike(int a, int b) {
    return cutter.second(klass[a]) == cutter.second(klass[b]);
  }

  /** Distinct neighbours, sorted; the contact with each is left in {@link #contact}. */
  private int[] neighbours(int region) {
    int[] found = new int[8];
    int count = 0;
    for (int l = head[region]; l >= 0; l = next[l]) {
      contact[sets.find(to[l])] = 0;
    }
    for (int l = head[region]; l >= 0; l = next[l]) {
      int other = sets.find(to[l]);
      if (other != region) {
        if (contact[other] == 0) {
          found = count == found.length ? Arrays.copyOf(found, count * 2) : found;
          found[count++] = other;
        }
        contact[other] += length[l];
      }
    }
    int[] sorted = Arrays.copyOf(found, count);
    Arrays.sort(sorted);
    return sorted;
  }

  private void join(int region, int target, int[] neighbours) {
    int into = klass[target];
    thin[target] = false;
    int root = unite(region, target);
    for (int other : neighbours) {
      if (other != target && klass[other] == into && !thin[other]) {
        root = unite(root, other);
      }
    }
    klass[root] = into;
    thin[root] = false;
    queue.add(new Entry(area[root], root));
  }

  private int unite(int a, int b) {
    int rootA = sets.find(a);
    int rootB = sets.find(b);
    if (rootA == rootB) {
      return rootA;
    }
    sets.union(rootA, rootB);
    int root = sets.find(rootA);
    int gone = root == rootA ? rootB : rootA;
    area[root] += area[gone];
    valueSum[root] += valueSum[gone];
    secondSum[root] += secondSum[gone];
    append(root, gone);
    return root;
  }

  private void append(int root, int gone) {
    if (head[gone] < 0) {
      return;
    }
    if (head[root] < 0) {
      head[root] = head[gone];
    } else {
      next[tail[root]] = head[gone];
    }
    tail[root] = tail[gone];
  }

  private double apart(int a, int b) {
    return Math.abs(mean(valueSum, a) - mean(valueSum, b))
        + Math.abs(mean(secondSum, a) - mean(secondSum, b));
  }

  private double mean(double[] sum, int region) {
    return area[region] == 0 ? 0 : sum[region] / area[region];
  }

  /** The region that a region is now part of: the lowest number of those joined. */
  public int root(int region) {
    return sets.find(region);
  }

  /** Mean value of the region that a region is now part of. */
  public double valueOf(int region) {
    return mean(valueSum, sets.find(region));
  }

  /** The class that a region has now. */
  public int klassOf(int region) {
    return klass[sets.find(region)];
  }
}
