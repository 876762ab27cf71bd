package fieldsalt.facts;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import fieldsalt.finding.InputProblem;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CropsTest {
  private final Crops crops = Crops.standard();

  @Test
  void hundredCropsWithNumbersAndSixtyTwoWithARating() {
    assertThat(crops.search("")).filteredOn(c -> c.tolerance().isPresent()).hasSize(100);
    assertThat(crops.search("")).filteredOn(c -> c.tolerance().isEmpty()).hasSize(62);
    assertThat(crops.search("")).allSatisfy(c -> assertThat(c.source()).isNotBlank());
    assertThat(crops.search("")).allSatisfy(c -> assertThat(c.confidence()).isNotBlank());
    assertThat(crops.search("")).extracting(Crop::edition).containsOnly("1990", "1999");
    assertThat(crops.search("")).extracting(Crop::name).doesNotHaveDuplicates();
    assertThat(crops.search("")).allSatisfy(c -> assertThat(c.ratingInWords()).isNotBlank());
  }

  /** As growers write them. */
  @ParameterizedTest
  @CsvSource({
    "oats, Oat (grain), Oat (forage)",
    "milo, Sorghum (grain), ''",
    "winter wheat, Wheat (bread), Wheat (durum)",
    "almonds, Almond, ''",
    "grapes, Grape, ''",
    "tomatoes, Tomato, ''",
    "dry beans, 'Bean, common', ''",
    "alfalfa hay, Alfalfa / lucerne, ''"
  })
  void everydayNames(String text, String taken, String other) {
    Crops.Match match = crops.find(text);
    assertThat(match.crop().name()).isEqualTo(taken);
    assertThat(match.sentence().orElse("")).contains(other).doesNotContain("Wheatgrass");
  }

  @ParameterizedTest
  @CsvSource({
    "barley, Barley (grain), Barley (forage)",
    "corn, Corn / maize (grain), 'Corn, sweet'",
    "Rye, Rye (grain), Rye (forage)",
    "wheat, Wheat (bread), Wheat (durum)",
    "cowpea, Cowpea (seed), Cowpea (forage)",
    "durum wheat, Wheat (durum), 'Wheat, durum (forage)'"
  })
  void bareNamesTakeTheGrainAndNameTheOthers(String text, String taken, String other) {
    Crops.Match match = crops.find(text);
    assertThat(match.crop().name()).isEqualTo(taken);
    assertThat(match.sentence()).hasValueSatisfying(s -> assertThat(s).contains(taken, other));
  }

  @ParameterizedTest
  @CsvSource({
    "alfalfa, Alfalfa / lucerne",
    "lucerne, Alfalfa / lucerne",
    "ALFALFA / Lucerne, Alfalfa / lucerne",
    "tall wheatgrass, 'Wheatgrass, tall'",
    "sweet corn, 'Corn, sweet'",
    "sudan grass, Sudan grass",
    "safflower, Safflower",
    "watermelon, Watermelon",
    "tomato, Tomato",
    "alf, Alfalfa / lucerne",
    "Tomatoes, Tomato",
    "grapes, Grape",
    "Soybeans, Soybean",
    "sugarbeets, Sugar beet",
    "Sudangrass, Sudan grass",
    "bermudagrass, Bermuda grass",
    "grain corn, Corn / maize (grain)",
    "Corn (grain), Corn / maize (grain)",
    "forage barley, Barley (forage)",
    "durum wheat, Wheat (durum)",
    "asparagus, Asparagus"
  })
  void oneNameOneRow(String text, String taken) {
    assertThat(crops.find(text).crop().name()).isEqualTo(taken);
  }

  @Test
  void aNameOfManyRowsIsAskedBack() {
    assertThatThrownBy(() -> crops.find("clover"))
        .isInstanceOf(InputProblem.class)
        .hasMessageContaining("Clover, ladino")
        .hasMessageContaining("Say which");
  }

  /** A beet may be red or sugar beet: the one that stands first is not taken. */
  @ParameterizedTest
  @CsvSource({
    "beet, Sugar beet",
    "beets, 'Beet, red'",
    "bean, 'Bean, mung'",
    "onion, Onion (seed)"
  })
  void aWordOfManyRowsIsAskedBack(String text, String other) {
    assertThatThrownBy(() -> crops.find(text))
        .isInstanceOf(InputProblem.class)
        .hasMessageContaining(other)
        .hasMessageContaining("Say which");
  }

  @Test
  void anUnknownNameGetsTheNearest() {
    assertThatThrownBy(() -> crops.find("alfafla"))
        .isInstanceOf(InputProblem.class)
        .hasMessageContaining("\"alfafla\"")
        .hasMessageContaining("Alfalfa / lucerne");
  }

  @Test
  void searchLooksIntoBothNames() {
    assertThat(crops.search("alf")).extracting(Crop::name).contains("Alfalfa / lucerne");
    assertThat(crops.search("zea")).extracting(Crop::name).contains("Corn, sweet");
    assertThat(crops.search("")).hasSize(162);
  }

  @Test
  void otherEditionsStandBesideAndAreNotMixed() {
    Crop plum = crops.find("Plum / prune").crop();
    assertThat(plum.tolerance()).hasValue(new Crop.Tolerance(2.6, 31));
    assertThat(crops.alternatives(plum))
        .extracting(Crops.Alternative::tolerance)
        .containsExactly(new Crop.Tolerance(1.5, 18));
    assertThat(FactTable.rows("crop_alternatives.csv"))
        .allSatisfy(
            r -> assertThat(crops.find(r.get("crop")).crop().name()).isEqualTo(r.get("crop")));
  }

  @Test
  void twelveCommonCropsAllHaveNumbers() {
    assertThat(crops.twelve()).hasSize(12).allSatisfy(c -> assertThat(c.tolerance()).isPresent());
  }

  /** FAO Irrigation and Drainage Paper 56 ranges; values of the table root_zone.csv. */
  @ParameterizedTest
  @CsvSource({
    "alfalfa, 120",
    "barley, 100",
    "corn, 100",
    "cotton, 100",
    "tall wheatgrass, 90",
    "sugar beet, 90",
    "tomato, 90",
    "soybean, 75",
    "'Bean, common', 75",
    "potato, 45",
    "strawberry, 30",
    "almond, 120",
    "guar, 90"
  })
  void rootZones(String crop, double cm) {
    assertThat(RootZones.depthCm(Optional.of(crops.find(crop).crop()))).isEqualTo(cm);
  }

  @Test
  void rootZoneWithoutACrop() {
    assertThat(RootZones.depthCm(Optional.empty())).isEqualTo(90);
  }

  /**
   * Ayers and Westcot 1985, FAO 29 rev. 1, table 4 (columns from memory): 66 crops x ECe and ECw =
   * ECe / 1.5 at 100, 90, 75, 50 and 0 % yield. The slopes of the crop table are themselves
   * rounded: the printed figure must round from a slope that rounds to the published one. Two rows
   * agree with no published pair and are left open in the table's notes: tall fescue (columns imply
   * a slope near 6.2) and broad bean (2.6 at 90 % from 1.5 at 100 %, and 2.0 for ECw at 75 %).
   */
  @Test
  void columnsOfFao29Table4() {
    Set<String> open = Set.of("Fescue, tall", "Broad bean / faba (seed)");
    Set<String> olderPair = Set.of("Wheat (durum)", "Grapefruit", "Orange", "Plum / prune");
    List<Map<String, String>> rows = FactTable.rows("fao29_table4_check.csv");
    int checked = 0;
    for (Map<String, String> row : rows) {
      String name = row.get("crop");
      String table = olderPair.contains(name) ? "crop_alternatives.csv" : "crops.csv";
      if (!open.contains(name)) {
        checked += checkColumns(row, rowOf(table, name));
      }
    }
    assertThat(rows).hasSize(66);
    assertThat(checked).isEqualTo(64 * 10);
  }

  private static Map<String, String> rowOf(String table, String crop) {
    return FactTable.rows(table).stream()
        .filter(r -> r.get("crop").equals(crop))
        .findFirst()
        .orElseThrow();
  }

  private static int checkColumns(Map<String, String> printedRow, Map<String, String> crop) {
    double a = Double.parseDouble(crop.get("threshold_dS_m"));
    String slope = crop.get("slope_pct_per_dS_m");
    double b = Double.parseDouble(slope);
    for (int pct : new int[] {100, 90, 75, 50, 0}) {
      for (boolean water : new boolean[] {false, true}) {
        String printed = printedRow.get((water ? "ecw" : "ece") + pct);
        double share = water ? 1.5 : 1;
        double least = (a + (100 - pct) / (b + halfDigit(slope))) / share;
        double most = (a + (100 - pct) / (b - halfDigit(slope))) / share;
        assertThat(Double.parseDouble(printed))
            .as("%s at %d %%, water %s", crop.get("crop"), pct, water)
            .isBetween(least - halfDigit(printed), most + halfDigit(printed));
      }
    }
    return 10;
  }

  private static double halfDigit(String printed) {
    return 0.5 * Math.pow(10, -new BigDecimal(printed).scale()) + 1e-9;
  }
}
