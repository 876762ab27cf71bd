package fieldsalt.zones.lattice;

/** Sets of the integers 0 to n-1; the smallest member stands for its set. */
final class UnionFind {
  private final int[] parent;

  UnionFind(int size) {
    parent = new int[size];
    for (int i = 0; i < size; i++) {
      parent[i] = i;
    }
  }

  int find(int item) {
    int root = item;
    while (parent[root] != root) {
      root = parent[root];
    }
    int at = item;
    while (parent[at] != root) {
      int next = parent[at];
      parent[at] = root;
      at = next;
    }
    return root;
  }

  void union(int a, int b) {
    int rootA = find(a);
    int rootB = find(b);
    parent[Math.max(rootA, rootB)] = Math.min(rootA, rootB);
  }
}
