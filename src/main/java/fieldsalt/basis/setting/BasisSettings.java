package fieldsalt.basis.setting;

import java.util.Map;
import java.util.TreeMap;

/**
 * Settings of the stage that brings every reading to the saturated paste.
 *
 * @param laboratories by the laboratory's name, case-blind; others take the defaults
 * @param options what a user may switch on
 */
public record BasisSettings(
    LaboratoryErrors laboratoryErrors,
    ConversionErrors conversionErrors,
    SpecialSoilErrors specialSoils,
    Map<String, LaboratorySettings> laboratories,
    BasisOptions options) {
  public BasisSettings {
    laboratories = Map.copyOf(laboratories);
  }

  public static BasisSettings defaults() {
    return new BasisSettings(
        LaboratoryErrors.defaults(),
        ConversionErrors.defaults(),
        SpecialSoilErrors.defaults(),
        Map.of(),
        BasisOptions.defaults());
  }

  public BasisSettings withLaboratory(String name, LaboratorySettings settings) {
    Map<String, LaboratorySettings> more = new TreeMap<>(laboratories);
    more.put(name, settings);
    return new BasisSettings(laboratoryErrors, conversionErrors, specialSoils, more, options);
  }

  public BasisSettings withOptions(BasisOptions other) {
    return new BasisSettings(laboratoryErrors, conversionErrors, specialSoils, laboratories, other);
  }

  public BasisSettings withLaboratoryErrors(LaboratoryErrors other) {
    return new BasisSettings(other, conversionErrors, specialSoils, laboratories, options);
  }

  public BasisSettings withConversionErrors(ConversionErrors other) {
    return new BasisSettings(laboratoryErrors, other, specialSoils, laboratories, options);
  }

  public BasisSettings withSpecialSoils(SpecialSoilErrors other) {
    return new BasisSettings(laboratoryErrors, conversionErrors, other, laboratories, options);
  }

  public LaboratorySettings laboratory(String name) {
    if (laboratories.isEmpty()) {
      return LaboratorySettings.defaults();
    }
    LaboratorySettings exact = laboratories.get(name);
    return exact != null
        ? exact
        : laboratories.entrySet().stream()
            .filter(e -> e.getKey().strip().equalsIgnoreCase(name.strip()))
            .map(Map.Entry::getValue)
            .findFirst()
            .orElse(LaboratorySettings.defaults());
  }
}
