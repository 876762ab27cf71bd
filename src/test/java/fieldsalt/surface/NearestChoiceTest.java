package fieldsalt.surface;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Comparator;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class NearestChoiceTest {
  @Test
  void equalsSortingWhateverTheGuessAndTheTies() {
    Random random = new Random(3);
    NearestChoice choice = new NearestChoice(40);
    for (int trial = 0; trial < 4000; trial++) {
      int n = 1 + random.nextInt(40);
      int values = 1 + random.nextInt(60);
      double[] d2 = random.ints(n, 0, values).mapToDouble(i -> i * 0.7).toArray();
      int wanted = 1 + random.nextInt(n);
      choice.clear();
      Arrays.stream(d2).forEach(choice::add);
      choice.choose(wanted, random.nextInt(values + 4) * 0.7);
      int[] expected =
          IntStream.range(0, n)
              .boxed()
              .sorted(Comparator.<Integer>comparingDouble(i -> d2[i]).thenComparing(i -> i))
              .limit(wanted)
              .sorted()
              .mapToInt(i -> i)
              .toArray();
      assertThat(Arrays.copyOf(choice.chosen(), choice.count())).isEqualTo(expected);
    }
  }
}
