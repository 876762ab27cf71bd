package fieldsalt.basis.relation;

/**
 * ECe = 6.5 EC1:5. dS/m at 25 °C. Loveday et al. 1972, as printed in Rayment &amp; Lyons 2011,
 * table 14.2. Irrigated soils, Australia. Seen in print.
 */
final class LovedayEtAl1972 extends PublishedLines {
  LovedayEtAl1972() {
    super(
        "LovedayEtAl1972",
        "Loveday et al. 1972, as printed in Rayment & Lyons 2011, table 14.2",
        "irrigated soils, Australia");
  }
}
