package fieldsalt.basis.relation;

/**
 * ECe = 6.29 EC1:5 − 0.27. dS/m at 25 °C. Lyons et al. 2003, as printed in Rayment &amp; Lyons
 * 2011, table 14.2. Queensland. Seen in print.
 */
final class LyonsEtAl2003 extends PublishedLines {
  LyonsEtAl2003() {
    super(
        "LyonsEtAl2003",
        "Lyons et al. 2003, as printed in Rayment & Lyons 2011, table 14.2",
        "Queensland");
  }
}
