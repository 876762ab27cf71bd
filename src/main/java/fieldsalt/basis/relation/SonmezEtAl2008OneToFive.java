package fieldsalt.basis.relation;

/**
 * 1:5 extract: sandy ECe = 8.22 EC − 0.33, loamy 7.58 EC + 0.06, clay 7.36 EC − 0.24; R² 0.98-0.99.
 * dS/m at 25 °C. Sonmez et al. 2008, Geoderma 144:361-369. Turkey, soils salinised in the
 * laboratory with chlorides. From memory.
 */
final class SonmezEtAl2008OneToFive extends PublishedLines {
  SonmezEtAl2008OneToFive() {
    super(
        "SonmezEtAl2008OneToFive",
        "Sonmez et al. 2008, Geoderma 144:361-369",
        "Turkey, soils salinised in the laboratory with chlorides");
  }
}
