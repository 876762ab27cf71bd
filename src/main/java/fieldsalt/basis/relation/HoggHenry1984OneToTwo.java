package fieldsalt.basis.relation;

/**
 * 1:2 extract: coarse ECe = 2.79 EC + 0.71, medium 2.35 EC − 0.36, fine 2.16 EC + 0.03; R² 0.91,
 * 0.95, 0.97. The medium line is left for 2.0 EC where that is higher. dS/m at 25 °C. Hogg &amp;
 * Henry 1984, Can. J. Soil Sci. 64:699-704. Sulphate soils of Saskatchewan, 1:2 extract. Seen
 * second-hand.
 */
public final class HoggHenry1984OneToTwo extends PublishedLines {
  public HoggHenry1984OneToTwo() {
    super(
        "HoggHenry1984OneToTwo",
        "Hogg & Henry 1984, Can. J. Soil Sci. 64:699-704",
        "sulphate soils of Saskatchewan, 1:2 extract");
  }
}
