package fieldsalt.basis.relation;

/**
 * 1:2.5 extract: ECe = 3.4954 EC, every texture, EC1:2.5 0.1-4.2; R² 0.956 on 60 samples. dS/m at
 * 25 °C. Isdory, Massawe &amp; Msanya 2021. Magozi irrigation scheme, Tanzania. Seen in print.
 */
final class IsdoryEtAl2021 extends PublishedLines {
  IsdoryEtAl2021() {
    super("IsdoryEtAl2021", "Isdory, Massawe & Msanya 2021", "Magozi irrigation scheme, Tanzania");
  }
}
