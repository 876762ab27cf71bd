package fieldsalt.basis.relation;

/**
 * Probe in the 1:1 suspension: coarse ECe = 3.01 EC − 0.06, medium 3.01 EC − 0.77, fine 2.66 EC −
 * 0.97; R² 0.98. Left for the extract's multiplier where that is higher. dS/m at 25 °C. Hogg &amp;
 * Henry 1984, Can. J. Soil Sci. 64:699-704. Sulphate soils of Saskatchewan, 1:1 suspension. Seen
 * second-hand.
 */
final class HoggHenry1984OneToOne extends PublishedLines {
  HoggHenry1984OneToOne() {
    super(
        "HoggHenry1984OneToOne",
        "Hogg & Henry 1984, Can. J. Soil Sci. 64:699-704",
        "sulphate soils of Saskatchewan, 1:1 suspension");
  }
}
