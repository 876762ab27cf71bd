package fieldsalt.handover.raster;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;

class SafeNameTest {
  @Test
  void namesThatWouldHarmAPathDoNot() {
    List<String> names =
        List.of(
            "../../x",
            "CON",
            "com1",
            "a/b",
            "a\\b",
            "\uD83C\uDF3E",
            "حقل شمالي",
            "Ñandú 2",
            "x".repeat(300),
            "",
            ".",
            "North",
            "north");
    Map<String, String> safe = SafeName.of(names);
    assertThat(safe)
        .containsEntry("../../x", "x")
        .containsEntry("CON", "field-con")
        .containsEntry("com1", "field-com1")
        .containsEntry("a/b", "a-b")
        .containsEntry("a\\b", "a-b-2")
        .containsEntry("\uD83C\uDF3E", "field")
        .containsEntry("حقل شمالي", "field-2")
        .containsEntry("Ñandú 2", "nandu-2")
        .containsEntry("x".repeat(300), "x".repeat(40))
        .containsEntry("North", "north")
        .containsEntry("north", "north-2");
  }

  @Property(tries = 300)
  void whateverTheNameThePartIsPlain(@ForAll List<String> names) {
    List<String> distinct = names.stream().distinct().toList();
    Map<String, String> safe = SafeName.of(distinct);
    assertThat(safe.keySet()).containsExactlyElementsOf(distinct);
    assertThat(safe.values()).doesNotHaveDuplicates();
    assertThat(safe.values()).allMatch(s -> s.matches("[a-z0-9][a-z0-9-]{0,49}"));
  }
}
