package fieldsalt.basis.relation;

/**
 * 1:2.5 extract: sandy ECe = 4.34 EC + 0.17, loamy 3.84 EC + 0.35, clay 3.68 EC + 0.22; R² about
 * 0.98. dS/m at 25 °C. Sonmez et al. 2008, Geoderma 144:361-369. Turkey, soils salinised in the
 * laboratory with chlorides. From memory.
 */
final class SonmezEtAl2008OneToTwoAndHalf extends PublishedLines {
  SonmezEtAl2008OneToTwoAndHalf() {
    super(
        "SonmezEtAl2008OneToTwoAndHalf",
        "Sonmez et al. 2008, Geoderma 144:361-369",
        "Turkey, soils salinised in the laboratory with chlorides");
  }
}
