package fieldsalt.classes;

import fieldsalt.basis.site.ReadingErrors;
import fieldsalt.basis.site.Scale;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.facts.Crop;
import fieldsalt.finding.Finding;
import fieldsalt.read.field.FieldBoundary;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;

/**
 * The class scheme of each field.
 *
 * @param byField in the order of the fields
 */
public record FieldSchemes(Map<String, ClassScheme> byField, List<Finding> findings) {
  /** By what fields are cut into classes. */
  public enum By {
    CROP,
    NRCS,
    BREAKS;

    /** From the word of the job; what is neither follows the crop. */
    public static By of(String word) {
      return switch (word) {
        case "nrcs" -> NRCS;
        case "breaks" -> BREAKS;
        default -> CROP;
      };
    }
  }

  /**
   * What the user asks for.
   *
   * @param breaks of the property, ascending; used by {@code BREAKS} only
   * @param ece whether ECe is mapped, so that crops have a say
   */
  public record Settings(By by, List<Double> breaks, boolean ece) {}

  /**
   * Makes them.
   *
   * @param asked by field
   * @param readings that are mapped
   * @param gypsiferous whether gypsum is confirmed in a field's root zone
   */
  public static FieldSchemes of(
      Function<String, Settings> asked,
      List<FieldBoundary> fields,
      FieldCrops crops,
      SiteReadings readings,
      Predicate<FieldBoundary> gypsiferous) {
    Map<String, ClassScheme> schemes = new LinkedHashMap<>();
    List<Finding> findings = new ArrayList<>();
    ReadingErrors errors = ReadingErrors.of(readings);
    for (FieldBoundary field : fields) {
      Settings settings = asked.apply(field.name());
      if (!settings.ece() && settings.by() != By.BREAKS) {
        schemes.put(field.name(), ofProperty(readings));
      } else {
        Optional<Crop> crop = settings.ece() ? crops.of(field.name()) : Optional.empty();
        ClassSchemes.Made byCrop =
            ClassSchemes.forCrop(
                field.name(), crop, errors.median(field.name()), gypsiferous.test(field));
        schemes.put(field.name(), chosen(settings, byCrop.scheme(), readings.unit()));
        findings.addAll(settings.by() == By.CROP ? byCrop.findings() : List.of());
      }
    }
    return new FieldSchemes(schemes, findings);
  }

  private static ClassScheme chosen(Settings settings, ClassScheme byCrop, String unit) {
    double limit = byCrop.limitDsPerM();
    return switch (settings.by()) {
      case CROP -> byCrop;
      case NRCS -> ClassSchemes.nrcs().withLimit(limit);
      case BREAKS -> ClassSchemes.ofBreaks(settings.breaks(), limit, unit);
    };
  }

  /** Of another property than ECe: the middle reading stands for a limit that nobody has set. */
  private static ClassScheme ofProperty(SiteReadings readings) {
    double[] sorted =
        readings.rows().stream().mapToDouble(SiteReadings.Row::value).sorted().toArray();
    double middle = sorted.length == 0 ? 0 : sorted[sorted.length / 2];
    double limit = readings.scale() == Scale.LOG ? Math.exp(middle) : middle;
    return new ClassScheme(
        "groups of " + readings.property(),
        List.of(limit),
        List.of("below the middle reading", "from the middle reading up"),
        limit);
  }
}
