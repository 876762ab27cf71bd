package fieldsalt.facts;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.quantity.EcUnit;
import org.junit.jupiter.api.Test;

class DissolvedSaltTest {
  // Rayment & Lyons 2011 appendix table 5.3: 4 dS/m = 4000 uS/cm = 400 mS/m = 0.4 S/m
  @Test
  void unitsOfConductivity() {
    assertThat(4000 * EcUnit.US_PER_CM.dSPerM()).isCloseTo(4, within(1e-12));
    assertThat(400 * EcUnit.MS_PER_M.dSPerM()).isCloseTo(4, within(1e-12));
    assertThat(0.4 * EcUnit.S_PER_M.dSPerM()).isCloseTo(4, within(1e-12));
    assertThat(4 * EcUnit.MS_PER_CM.dSPerM()).isCloseTo(4, within(1e-12));
  }

  // table of the Handbook 60 type: EC 4 -> 2560 mg/L, about 40 meq/L, -1.44 bar = -0.144 MPa; EC 10
  // ->
  // 8000 mg/L; at EC 5 the rule steps from 3200 to 4000
  @Test
  void rulesOfTheTrade() {
    assertThat(DissolvedSalt.solidsMgL(4)).isCloseTo(2560, within(0.5));
    assertThat(DissolvedSalt.cationsMeqL(4)).isCloseTo(40, within(0.5));
    assertThat(DissolvedSalt.osmoticPotentialMPa(4)).isCloseTo(-0.144, within(0.0005));
    assertThat(DissolvedSalt.solidsMgL(10)).isCloseTo(8000, within(0.5));
    assertThat(DissolvedSalt.solidsMgL(5)).isCloseTo(3200, within(0.5));
    assertThat(DissolvedSalt.solidsMgL(Math.nextUp(5.0))).isCloseTo(4000, within(0.5));
  }

  // Rayment & Lyons 2011, method 3B1: EC1:5 0.50 -> 0.168 %
  @Test
  void solubleSaltOfSoil() {
    assertThat(DissolvedSalt.saltPct(0.50)).isCloseTo(0.168, within(0.0005));
  }
}
