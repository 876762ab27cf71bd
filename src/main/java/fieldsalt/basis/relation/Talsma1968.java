package fieldsalt.basis.relation;

/**
 * ECe = 6.4 EC1:5. dS/m at 25 °C. Talsma 1968, as printed in Rayment &amp; Lyons 2011, table 14.2.
 * Coleambally, Australia. Seen in print.
 */
final class Talsma1968 extends PublishedLines {
  Talsma1968() {
    super(
        "Talsma1968",
        "Talsma 1968, as printed in Rayment & Lyons 2011, table 14.2",
        "Coleambally, Australia");
  }
}
