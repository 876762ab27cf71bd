package fieldsalt.zones.lattice;

/** First in, first out; grows as needed. */
public final class IntQueue {
  private int[] items = new int[1024];
  private int head;
  private int size;

  public void add(int item) {
    if (size == items.length) {
      grow();
    }
    items[(head + size++) & (items.length - 1)] = item;
  }

  private void grow() {
    int[] more = new int[items.length * 2];
    for (int i = 0; i < size; i++) {
      more[i] = items[(head + i) & (items.length - 1)];
    }
    items = more;
    head = 0;
  }

  public int take() {
    int item = items[head];
    head = (head + 1) & (items.length - 1);
    size--;
    return item;
  }

  public boolean isEmpty() {
    return size == 0;
  }
}
