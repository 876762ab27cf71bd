package fieldsalt.basis.relation;

/**
 * 1:2.5 extract: clay ECe = 2.0963 EC, sandy clay loam 2.7714 EC, sandy clay 2.3519 EC, clay loam
 * 2.0811 EC; R² above 0.90 on 198 samples. dS/m at 25 °C. Tanzania J. Agric. Sci. 2023, 54-61. Four
 * irrigation schemes in Tanzania, 0-30 cm. Seen in print; its authors were not.
 */
final class TanzaniaSchemes2023 extends PublishedLines {
  TanzaniaSchemes2023() {
    super(
        "TanzaniaSchemes2023",
        "Tanzania J. Agric. Sci. 2023, 54-61",
        "four irrigation schemes in Tanzania, 0-30 cm");
  }
}
