package fieldsalt.basis.relation;

/**
 * ECe = 6.44 EC1:5 − 0.102. dS/m at 25 °C. Murray 1980, as printed in Rayment &amp; Lyons 2011,
 * table 14.2. Irrigation areas of Queensland. Seen in print.
 */
final class Murray1980 extends PublishedLines {
  Murray1980() {
    super(
        "Murray1980",
        "Murray 1980, as printed in Rayment & Lyons 2011, table 14.2",
        "irrigation areas of Queensland");
  }
}
