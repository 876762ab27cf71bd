package fieldsalt.basis.relation;

/**
 * ECe = 6.08 EC1:5 − 0.937, negative below EC1:5 0.154. dS/m at 25 °C. Shaw 1981, as printed in
 * Rayment &amp; Lyons 2011, table 14.2. Queensland. Seen in print.
 */
final class Shaw1981 extends PublishedLines {
  Shaw1981() {
    super("Shaw1981", "Shaw 1981, as printed in Rayment & Lyons 2011, table 14.2", "Queensland");
  }
}
