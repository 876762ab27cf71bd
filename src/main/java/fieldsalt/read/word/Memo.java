package fieldsalt.read.word;

import java.util.HashMap;
import java.util.Map;
import java.util.function.Function;

/** Remembers what a text means: sheets repeat few words in many rows. */
public final class Memo<T> {
  private static final int MOST = 10_000;

  private final Function<String, T> meaning;
  private final Map<String, T> known = new HashMap<>();

  public Memo(Function<String, T> meaning) {
    this.meaning = meaning;
  }

  public T of(String text) {
    T before = known.get(text);
    if (before != null) {
      return before;
    }
    T now = meaning.apply(text);
    if (known.size() < MOST) {
      known.put(text, now);
    }
    return now;
  }
}
