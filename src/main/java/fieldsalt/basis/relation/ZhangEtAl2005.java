package fieldsalt.basis.relation;

/**
 * 1:1 extract: ECe = 1.85 EC; r² 0.85 on 170 soils. dS/m at 25 °C. Zhang et al. 2005, Soil Sci.
 * Soc. Am. J. 69:1146-1151. Oklahoma and Texas, agricultural and oil-field soils. Seen second-
 * hand.
 */
public final class ZhangEtAl2005 extends PublishedLines {
  public ZhangEtAl2005() {
    super(
        "ZhangEtAl2005",
        "Zhang et al. 2005, Soil Sci. Soc. Am. J. 69:1146-1151",
        "Oklahoma and Texas, agricultural and oil-field soils");
  }
}
