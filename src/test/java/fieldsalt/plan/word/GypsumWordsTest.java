package fieldsalt.plan.word;

import static org.assertj.core.api.Assertions.assertThat;

import fieldsalt.plan.setting.GypsumSettings.Lime;
import fieldsalt.quantity.UnitSystem;
import org.junit.jupiter.api.Test;

class GypsumWordsTest {
  /** Acid and sulfur only with free lime. */
  @Test
  void equivalentsFollowTheLime() {
    Sentence unknown = GypsumWords.equivalents(10, Lime.UNKNOWN);
    assertThat(unknown.text(UnitSystem.METRIC))
        .contains("elemental sulfur 1.9 t/ha (only if the soil holds free lime)");
    assertThat(GypsumWords.equivalents(10, Lime.NO).text(UnitSystem.METRIC))
        .doesNotContain("elemental sulfur 1.9")
        .contains("calcium chloride dihydrate 8.5 t/ha", "do nothing without free lime");
    assertThat(GypsumWords.equivalents(10, Lime.YES).text(UnitSystem.US))
        .contains("sulfuric acid 93 % 2.7 tons/acre")
        .doesNotContain("only if");
  }
}
