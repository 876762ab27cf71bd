package fieldsalt.basis.relation;

/**
 * 1:1 extract: sandy ECe = 2.72 EC − 1.27, loamy 2.15 EC − 0.44, clay 2.03 EC − 0.41 (from memory),
 * all 2.23 EC − 0.58; R² 0.98-0.99. dS/m at 25 °C. Sonmez et al. 2008, Geoderma 144:361-369.
 * Turkey, soils salinised in the laboratory with chlorides. Seen second-hand.
 */
final class SonmezEtAl2008OneToOne extends PublishedLines {
  SonmezEtAl2008OneToOne() {
    super(
        "SonmezEtAl2008OneToOne",
        "Sonmez et al. 2008, Geoderma 144:361-369",
        "Turkey, soils salinised in the laboratory with chlorides");
  }
}
