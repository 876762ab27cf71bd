package fieldsalt.basis.relation;

/**
 * Probe in the 1:1 suspension: coarse ECe = 3.01 EC − 0.06, medium 3.01 EC − 0.77, fine 2.96 EC −
 * 0.95; a rough guide by its own words. The fine line differs from Hogg &amp; Henry 1984, its
 * likely origin. dS/m at 25 °C. Franzen 2003, NDSU Extension SF-1087. North Dakota, 1:1 suspension.
 * Seen second-hand.
 */
final class Franzen2003 extends PublishedLines {
  Franzen2003() {
    super("Franzen2003", "Franzen 2003, NDSU Extension SF-1087", "North Dakota, 1:1 suspension");
  }
}
