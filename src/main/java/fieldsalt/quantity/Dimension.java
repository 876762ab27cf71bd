package fieldsalt.quantity;

import fieldsalt.quantity.UnitSystem.Amount;
import java.util.Optional;

/** What kind of number is told to people: its unit in each system and the digits it deserves. */
public enum Dimension {
  AREA(Amount.AREA, 3),
  RATE(Amount.RATE, 2),
  MASS(Amount.MASS, 3),
  WATER_DEPTH(Amount.WATER_DEPTH, 2),
  SOIL_DEPTH(Amount.SOIL_DEPTH, 2),
  VOLUME(Amount.WATER_VOLUME, 2),
  CONDUCTIVITY("dS/m", 2),
  PERCENT("%", 2),
  BORON("mg/L", 2),
  PURE("", 2),
  MONEY("", 3),
  MONEY_PER_AREA("per ha", 3),
  COUNT("", 6);

  private final Optional<Amount> amount;
  private final String sameUnit;
  private final int digits;

  Dimension(Amount amount, int digits) {
    this.amount = Optional.of(amount);
    this.sameUnit = "";
    this.digits = digits;
  }

  Dimension(String sameUnit, int digits) {
    this.amount = Optional.empty();
    this.sameUnit = sameUnit;
    this.digits = digits;
  }

  /** The unit's sign in a system; empty where the number has none. */
  public String unit(UnitSystem system) {
    if (this == MONEY_PER_AREA && system == UnitSystem.US) {
      return "per acre";
    }
    return amount.map(system::unit).orElse(sameUnit);
  }

  /** A metric value in the system's unit. */
  public double in(UnitSystem system, double inside) {
    if (this == MONEY_PER_AREA) {
      return inside / system.of(1, Amount.AREA);
    }
    return amount.map(a -> system.of(inside, a)).orElse(inside);
  }

  /** Significant digits that such a number deserves. */
  int digits() {
    return digits;
  }
}
