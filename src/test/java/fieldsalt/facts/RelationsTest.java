package fieldsalt.facts;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.facts.Hoffman1980.Application;
import fieldsalt.facts.UsSalinityLaboratory1954.SoilClass;
import fieldsalt.quantity.Texture;
import fieldsalt.quantity.TextureGroup;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Published relations of salinity and sodium at the precision printed. */
class RelationsTest {
  /** Handbook 60 (1954), regression of p. 26. */
  @ParameterizedTest
  @CsvSource({"13, 15.19", "5, 5.76", "10, 11.89", "20, 22.02", "30, 30.07"})
  void espFromSar(double sar, double esp) {
    assertThat(UsSalinityLaboratory1954.espFromSar(sar)).isCloseTo(esp, within(0.005));
  }

  /** The same, SAR 0: the raw regression gives -1.28 %, which is no ESP. */
  @Test
  void espOfNoSodiumIsNought() {
    assertThat(UsSalinityLaboratory1954.espOfEsr(-0.0126)).isCloseTo(-1.28, within(0.005));
    assertThat(UsSalinityLaboratory1954.espFromSar(0)).isZero();
  }

  /** The same, inverse. */
  @ParameterizedTest
  @CsvSource({"6, 5.18", "15, 12.82"})
  void sarFromEsp(double esp, double sar) {
    assertThat(UsSalinityLaboratory1954.sarFromEsp(esp)).isCloseTo(sar, within(0.005));
  }

  private static double sarOfMgL(double na, double ca, double mg) {
    return SodiumAdsorptionRatio.ofMeqL(
        na / EquivalentMass.mgPerMeq("na"),
        ca / EquivalentMass.mgPerMeq("ca"),
        mg / EquivalentMass.mgPerMeq("mg"));
  }

  /** Weiner, Applications of Environmental Chemistry, example 6.8, supply B. */
  @Test
  void sarOfSupplyB() {
    assertThat(sarOfMgL(63, 108, 33)).isCloseTo(1.36, within(0.005));
  }

  /**
   * The same example, supply A: 15.7 from the ions given; the printed 27.7 uses 255, which is the
   * dissolved solids, for sodium. The inconsistent answer is not reproduced.
   */
  @Test
  void sarOfSupplyAIsNotThePrintedOne() {
    double sar = sarOfMgL(144, 4.6, 1.1);
    assertThat(sar).isCloseTo(15.7, within(0.05));
    assertThat(sar).isNotCloseTo(27.7, within(1.0));
    assertThat(sarOfMgL(255, 4.6, 1.1)).isCloseTo(27.7, within(0.1));
  }

  /**
   * A turf salinity bulletin, Na 1000, Ca 200, Mg 100 mg/L: 14.4; the printed 20.6 halves the root
   * instead of the sum. The wrong answer is not reproduced.
   */
  @Test
  void sarOfTheTurfBulletinIsNotThePrintedOne() {
    double sar = sarOfMgL(1000, 200, 100);
    assertThat(sar).isCloseTo(14.4, within(0.05));
    assertThat(sar).isNotCloseTo(20.6, within(1.0));
  }

  /** Definition, from meq/L. */
  @Test
  void sarOfMilliequivalents() {
    assertThat(SodiumAdsorptionRatio.ofMeqL(10, 4, 2)).isCloseTo(5.77, within(0.005));
    assertThatThrownBy(() -> SodiumAdsorptionRatio.ofMeqL(10, 0, 0))
        .isInstanceOf(IllegalArgumentException.class);
  }

  /** Handbook 60 (1954), ch. 1; the sample of ECe 3.2, ESP 16, pH 9.5 is sodic. */
  @ParameterizedTest
  @CsvSource({"3.2, 16, SODIC", "3.99, 14.9, NORMAL", "4.0, 14.9, SALINE", "4.0, 15, SALINE_SODIC"})
  void classesOfHandbook60(double ece, double esp, SoilClass soil) {
    assertThat(UsSalinityLaboratory1954.classOf(ece, esp)).isEqualTo(soil);
  }

  /** FAO 29 (1985), example 3: maize, ECw 1.2, ET 800 mm at 90 and 100 % yield; unrounded LR. */
  @ParameterizedTest
  @CsvSource({"1.2, 2.5, 0.106, 895, 800", "1.2, 1.7, 0.164, 957, 800", "1, 2, 0.111, 1125, 1000"})
  void leachingRequirement(double ecw, double ece, double lr, double applied, double et) {
    double got = Rhoades1974.conventional(ecw, ece).orElseThrow();
    assertThat(got).isCloseTo(lr, within(0.0005));
    assertThat(et / (1 - got)).isCloseTo(applied, within(0.5));
  }

  /** Rhoades 1974: bean at its threshold 1; ECw 5 on ECe 1 has no answer. */
  @Test
  void leachingRequirementAtItsEnds() {
    assertThat(Rhoades1974.conventional(1, 1)).hasValue(0.25);
    assertThat(Rhoades1974.conventional(5, 1)).isEmpty();
    assertThat(Rhoades1974.waterFor(0.25, 1)).isCloseTo(1, within(1e-12));
  }

  /** FAO 29, sect. 2.4: cotton, ECe of no yield 27, ECw 2. */
  @Test
  void leachingRequirementOfFrequentIrrigation() {
    assertThat(Rhoades1974.highFrequency(2, 27)).isCloseTo(0.037, within(0.0005));
  }

  /** FAO 29, example 2 (ECw 1, LF 0.15) and table 3 (ECe = X ECw). */
  @Test
  void profileOfFao29() {
    double[] nodes = AyersWestcot1985.soilWater(1, 0.15);
    double[] nodesPrinted = {1, 1.515, 2.469, 4.255, 6.667};
    for (int k = 0; k < 5; k++) {
      assertThat(nodes[k]).isCloseTo(nodesPrinted[k], within(0.0005));
    }
    assertThat(AyersWestcot1985.meanSoilWater(1, 0.15)).isCloseTo(3.181, within(0.0005));
    assertThat(AyersWestcot1985.meanEce(1, 0.15)).isCloseTo(1.59, within(0.005));
  }

  /** FAO 29, table 3: concentration factors recomputed from the five-node mean. */
  @ParameterizedTest
  @CsvSource({
    "0.05, 3.25",
    "0.10, 2.05",
    "0.15, 1.59",
    "0.20, 1.33",
    "0.25, 1.16",
    "0.30, 1.04",
    "0.40, 0.87",
    "0.50, 0.76",
    "0.60, 0.68",
    "0.70, 0.62",
    "0.80, 0.57"
  })
  void concentrationFactors(double lf, double x) {
    assertThat(AyersWestcot1985.meanEce(1, lf)).isCloseTo(x, within(0.005));
  }

  /** Raats 1975. */
  @ParameterizedTest
  @CsvSource({"0.15, 2.232", "0.10, 2.558"})
  void meanOfRaats(double lf, double mean) {
    assertThat(Raats1975.meanSoilWater(1, lf)).isCloseTo(mean, within(0.0005));
  }

  /** Hoffman 1980: Co 12, C 4, 1 m; clay loam ponded, sandy loam, intermittent, peat, Ci 0.5. */
  @Test
  void reclamationDepths() {
    double fine = Hoffman1980.k(Application.PONDING, TextureGroup.FINE);
    assertThat(Hoffman1980.depth(fine, 1, 12, 4, 0)).isCloseTo(0.90, within(0.005));
    double coarse = Hoffman1980.k(Application.PONDING, TextureGroup.COARSE);
    assertThat(Hoffman1980.depth(coarse, 1, 12, 4, 0)).isCloseTo(0.30, within(0.005));
    for (TextureGroup group : TextureGroup.values()) {
      for (Application gentle :
          new Application[] {Application.INTERMITTENT, Application.SPRINKLING}) {
        assertThat(Hoffman1980.depth(Hoffman1980.k(gentle, group), 1, 12, 4, 0))
            .isCloseTo(0.30, within(0.005));
      }
    }
    assertThat(Hoffman1980.depth(Hoffman1980.K_PEAT, 1, 12, 4, 0)).isCloseTo(1.35, within(0.005));
    assertThat(Hoffman1980.depth(fine, 1, 12, 4, 0.5)).isCloseTo(0.986, within(0.0005));
    assertThat(Hoffman1980.k(Application.PONDING, TextureGroup.MEDIUM)).isEqualTo(0.2);
  }

  /** Hoffman 1980: boron 6 to 2 mg/L over 0.6 m. */
  @Test
  void boronReclamation() {
    assertThat(Hoffman1980.depth(Hoffman1980.K_BORON, 0.6, 6, 2, 0)).isCloseTo(1.08, within(0.005));
  }

  @Test
  void reclamationAtItsEnds() {
    assertThat(Hoffman1980.depth(0.3, 1, 4, 4, 0)).isZero();
    assertThatThrownBy(() -> Hoffman1980.depth(0.3, 1, 12, 1, 1.5))
        .isInstanceOf(IllegalArgumentException.class);
  }

  /** Handbook 60, table 6 and Ali 2011, example 8.7: ESP 35 to 15, CEC 22, 40 cm, 3.85 t a meq. */
  @Test
  void gypsumOfAli() {
    double meq = 22 * (35 - 15) / 100.0;
    assertThat(meq).isCloseTo(4.4, within(0.05));
    double byRule = meq * 3.85 * 40 / 30;
    assertThat(byRule).isCloseTo(22.587, within(0.0005));
    assertThat(byRule * 1.25).isCloseTo(28.23, within(0.005));
    assertThat(GypsumStoichiometry.requirement(1.25, 0.40, 1.49, 22, 35, 15))
        .isCloseTo(28.22, within(0.005));
  }

  /**
   * Handbook 60, table 6 (from memory): 5 meq per 100 g, tons an acre-foot and six inches; soil of
   * 4 million pounds an acre-foot, 1 short ton/acre = 2.2417 Mg/ha.
   */
  @Test
  void gypsumTableOfHandbook60() {
    double bulkDensity = 4e6 * 0.45359237e-3 / 4046.8564224 / 0.3048;
    double acreFoot = GypsumStoichiometry.requirement(1, 0.3048, bulkDensity, 5, 100, 0) / 2.2417;
    assertThat(acreFoot).isCloseTo(8.6, within(0.05));
    double sixInches = GypsumStoichiometry.requirement(1, 0.1524, bulkDensity, 5, 100, 0) / 2.2417;
    assertThat(sixInches).isCloseTo(4.3, within(0.05));
  }

  /**
   * Oster et al. 1999: CEC 20, ESP 25 to 10, 0.15 m, 1.35, F 1.2, 85 %; CEC 15, ESP 20 to 5, ...
   */
  @Test
  void gypsumOfOster() {
    double pure = GypsumStoichiometry.requirement(1.2, 0.15, 1.35, 20, 25, 10);
    assertThat(GypsumStoichiometry.product(pure, 85, 0)).isCloseTo(7.38, within(0.005));
    assertThat(GypsumStoichiometry.requirement(1.3, 0.30, 1.4, 15, 20, 5))
        .isCloseTo(10.58, within(0.005));
    assertThat(GypsumStoichiometry.requirement(1.2, 0.15, 1.4, 15, 10, 10)).isZero();
    assertThat(GypsumStoichiometry.requirement(1.2, 0.15, 1.4, 15, 6, 10)).isZero();
  }

  /** Oster et al. 1999 (from memory): 1.1, 1.2, 1.3 at target 15, 10, 5. */
  @ParameterizedTest
  @CsvSource({"15, 1.1", "10, 1.2", "5, 1.3", "3, 1.3", "20, 1.1", "12.5, 1.15"})
  void efficiencyFactor(double target, double factor) {
    assertThat(GypsumStoichiometry.factor(target)).isCloseTo(factor, within(1e-12));
  }

  /**
   * 1 % in 0.3 m is 42 Mg/ha; 10 Mg/ha at 2.5 g/L need 400 mm (Hira and Singh 1980: upper bound).
   */
  @Test
  void nativeGypsumAndDissolvingWater() {
    assertThat(GypsumStoichiometry.nativeGypsum(1, 0.3, 1.4)).isCloseTo(42, within(1e-9));
    assertThat(10 * GypsumStoichiometry.DISSOLVING_MM_PER_T_HA).isEqualTo(400);
  }

  @ParameterizedTest
  @CsvSource({"0, 0", "-5, 0", "101, 0", "80, 100", "80, -1"})
  void productOfNothingIsRefused(double purity, double moisture) {
    assertThatThrownBy(() -> GypsumStoichiometry.product(5, purity, moisture))
        .isInstanceOf(IllegalArgumentException.class);
  }

  /** FAO 29 (1985), table 1: SAR bands and EC limits. */
  @ParameterizedTest
  @CsvSource({
    "2, 0.8, NONE",
    "2, 0.7, SLIGHT_TO_MODERATE",
    "2, 0.19, SEVERE",
    "3, 0.8, SLIGHT_TO_MODERATE",
    "5, 1.3, NONE",
    "8, 0.4, SEVERE",
    "15, 3.0, NONE",
    "15, 2, SLIGHT_TO_MODERATE",
    "30, 2.8, SEVERE",
    "55, 4, SLIGHT_TO_MODERATE"
  })
  void infiltration(double sar, double ec, InfiltrationHazard hazard) {
    assertThat(InfiltrationHazard.of(sar, ec)).isEqualTo(hazard);
  }

  /** Calcium equivalents by molar mass: sulfur 32.06, acid 98.08 over gypsum 172.17 g/mol. */
  @Test
  void amendmentsByStoichiometry() {
    assertThat(amendment("elemental sulfur").tPerTGypsum())
        .isCloseTo(32.06 / 172.17, within(0.005));
    assertThat(amendment("sulfuric acid 93 %").tPerTGypsum())
        .isCloseTo(98.08 / 172.17 / 0.93, within(0.005));
    assertThat(amendment("calcium chloride dihydrate").tPerTGypsum())
        .isCloseTo(147.01 / 172.17, within(0.005));
    assertThat(amendment("calcium chloride dihydrate").needsLime()).isFalse();
    assertThat(amendment("elemental sulfur").needsLime()).isTrue();
  }

  private static Amendment amendment(String name) {
    return Amendment.all().stream().filter(a -> a.name().equals(name)).findFirst().orElseThrow();
  }

  /** Usual values by texture (common practice), and CEC from clay and organic matter. */
  @Test
  void usualSoil() {
    OptionalDouble none = OptionalDouble.empty();
    assertThat(UsualSoil.bulkDensity(Texture.SAND)).isEqualTo(1.60);
    assertThat(UsualSoil.bulkDensity(Texture.UNKNOWN)).isEqualTo(1.40);
    assertThat(UsualSoil.cec(Texture.CLAY_LOAM, none, none)).hasValue(22);
    assertThat(UsualSoil.cec(Texture.UNKNOWN, none, none)).isEmpty();
    assertThat(UsualSoil.cec(Texture.CLAY, OptionalDouble.of(30), OptionalDouble.of(1.5)))
        .hasValue(18);
  }

  /** Maas 1990, boron table of the US Salinity Laboratory; names are matched as whole words. */
  @Test
  void boronTolerances() {
    Crops crops = Crops.standard();
    assertThat(BoronTolerance.of(crops.find("lemon").crop()).orElseThrow().highMgL())
        .isEqualTo(0.5);
    assertThat(BoronTolerance.of(crops.find("alfalfa").crop()).orElseThrow().lowMgL()).isEqualTo(4);
    assertThat(BoronTolerance.of(crops.find("tall wheatgrass").crop())).isEmpty();
    assertThat(BoronTolerance.of(crops.find("peach").crop()).orElseThrow().highMgL())
        .isEqualTo(0.75);
    assertThat(BoronTolerance.of(crops.find("Pear").crop())).isEmpty();
  }

  /** Maas 1990, notes (e) and (h). */
  @Test
  void seedbedLimits() {
    Crops crops = Crops.standard();
    assertThat(SeedbedLimit.dsPerM(Optional.of(crops.find("sugar beet").crop()))).isEqualTo(3);
    assertThat(SeedbedLimit.dsPerM(Optional.of(crops.find("alfalfa").crop()))).isEqualTo(4);
    assertThat(SeedbedLimit.dsPerM(Optional.empty())).isEqualTo(4);
  }

  /** FAO 29 table 1: chloride and bicarbonate limits are meq/L. */
  @Test
  void waterLimits() {
    assertThat(WaterLimit.all())
        .filteredOn(l -> l.item().equals("cl") || l.item().equals("hco3"))
        .allSatisfy(l -> assertThat(l.unit()).isEqualTo("meq/L"));
    assertThat(WaterLimit.all())
        .filteredOn(l -> l.concerns(true))
        .extracting(WaterLimit::item)
        .contains("na", "cl", "b")
        .doesNotContain("sar");
  }
}
