package fieldsalt.zones.lattice;

import java.util.Arrays;

/**
 * Connected pieces of one class inside a part: over the four neighbours, and through the middle of
 * a square where the surface joins two opposite corners.
 *
 * @param of piece of each node, numbered from 0 from the north-west; -1 outside
 */
public record Components(int[] of, int count) {
  public static Components of(Nodes nodes) {
    return new Scan(nodes).run();
  }

  private static final class Scan {
    private final Nodes nodes;
    private final boolean[] inside;
    private final int[] klass;
    private final int columns;
    private final int[] label;
    private int[] parent = new int[1024];
    private int labels;

    Scan(Nodes nodes) {
      this.nodes = nodes;
      inside = nodes.inside();
      klass = nodes.klass();
      columns = nodes.lattice().columns();
      label = new int[nodes.lattice().nodes()];
    }

    Components run() {
      for (int row = 0; row < nodes.lattice().rows(); row++) {
        for (int i = row * columns; i < (row + 1) * columns; i++) {
          label[i] = inside[i] ? labelFor(i, row > 0, i > row * columns) : -1;
        }
      }
      return numbered();
    }

    private int labelFor(int i, boolean hasNorth, boolean hasWest) {
      boolean west = hasWest && same(i, i - 1);
      boolean north = hasNorth && same(i, i - columns);
      int mine = west ? label[i - 1] : north ? label[i - columns] : fresh();
      if (west && north && label[i - columns] != mine) {
        union(mine, label[i - columns]);
      }
      if (hasNorth && hasWest && !west && !north) {
        corners(i, mine);
      }
      return mine;
    }

    private boolean same(int i, int other) {
      return inside[other] && klass[i] == klass[other];
    }

    /** The square whose south-east corner is c, of another class than its neighbours there. */
    private void corners(int c, int mine) {
      int a = c - columns - 1;
      int b = c - columns;
      int d = c - 1;
      boolean ac = klass[a] == klass[c] && klass[b] != klass[c] && klass[d] != klass[c];
      boolean bd = klass[b] == klass[d] && klass[a] != klass[b] && klass[c] != klass[b];
      boolean acFirst = ac && (!bd || nodes.joinsAc(a, b, c, d));
      if (acFirst && inside[a]) {
        union(mine, label[a]);
      } else if (bd && !acFirst && inside[b] && inside[d]) {
        union(label[b], label[d]);
      }
    }

    private int fresh() {
      if (labels == parent.length) {
        parent = Arrays.copyOf(parent, labels * 2);
      }
      parent[labels] = labels;
      return labels++;
    }

    private int find(int item) {
      int root = item;
      while (parent[root] != root) {
        root = parent[root];
      }
      parent[item] = root;
      return root;
    }

    private void union(int a, int b) {
      int rootA = find(a);
      int rootB = find(b);
      parent[Math.max(rootA, rootB)] = Math.min(rootA, rootB);
    }

    private Components numbered() {
      int[] number = new int[labels];
      int count = 0;
      for (int i = 0; i < labels; i++) {
        int root = find(i);
        number[i] = root == i ? count++ : number[root];
      }
      for (int i = 0; i < label.length; i++) {
        label[i] = label[i] < 0 ? -1 : number[label[i]];
      }
      return new Components(label, count);
    }
  }
}
