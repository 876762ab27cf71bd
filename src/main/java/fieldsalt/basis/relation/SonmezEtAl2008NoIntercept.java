package fieldsalt.basis.relation;

/**
 * 1:1 extract without intercept: sandy ECe = 2.42 EC, loamy 2.06 EC, all 2.11 EC; R² 0.98. dS/m at
 * 25 °C. Sonmez et al. 2008, Geoderma 144:361-369. Turkey, soils salinised in the laboratory with
 * chlorides. Seen second-hand.
 */
final class SonmezEtAl2008NoIntercept extends PublishedLines {
  SonmezEtAl2008NoIntercept() {
    super(
        "SonmezEtAl2008NoIntercept",
        "Sonmez et al. 2008, Geoderma 144:361-369",
        "Turkey, soils salinised in the laboratory with chlorides");
  }
}
