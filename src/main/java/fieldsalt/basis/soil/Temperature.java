package fieldsalt.basis.soil;

/**
 * EC at another temperature brought to 25 °C: EC25 = EC (0.4470 + 1.4034 exp(−T/26.815)), T in °C,
 * 3-47. Sheets &amp; Hendrickx 1995 (Water Resour. Res. 31:2401-2409) as corrected by Corwin &amp;
 * Lesch 2005 (Comput. Electron. Agric. 46:11-43).
 */
public final class Temperature {
  static final double LOWEST_C = 3;
  static final double HIGHEST_C = 47;

  private Temperature() {}

  /** The factor to 25 °C; 0.99944 at 25 °C itself, which is why nothing near 25 is corrected. */
  public static double factor(double celsius) {
    return 0.4470 + 1.4034 * Math.exp(-celsius / 26.815);
  }

  public static boolean isValid(double celsius) {
    return celsius >= LOWEST_C && celsius <= HIGHEST_C;
  }

  /** 24.5 to 25.5 °C is 25 °C. */
  public static boolean isStandard(double celsius) {
    return celsius >= 24.5 && celsius <= 25.5;
  }
}
