package fieldsalt.basis.property;

import fieldsalt.basis.depth.RootZone;
import fieldsalt.basis.layer.Campaigns;
import fieldsalt.basis.layer.LayerKey;
import fieldsalt.basis.layer.LayerReadings;
import fieldsalt.basis.setting.BasisSettings;
import fieldsalt.basis.setting.LaboratoryErrors;
import fieldsalt.basis.setting.ReadingError;
import fieldsalt.basis.site.Composites;
import fieldsalt.basis.site.PropertyReadings;
import fieldsalt.basis.site.Scale;
import fieldsalt.basis.site.SiteReadings;
import fieldsalt.basis.soil.IonBasis;
import fieldsalt.finding.Finding;
import fieldsalt.quantity.DepthRange;
import fieldsalt.read.file.SourceRow;
import fieldsalt.read.sample.Sample;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.DoubleBinaryOperator;
import java.util.function.Function;

/** Hands over soil properties: SAR and ESP as far as they can be trusted, the others as given. */
public final class PropertyHandOver {
  private final BasisSettings settings;
  private final Collection<Sample> lines;
  private final Map<LayerKey, Double> ece = new TreeMap<>();
  private final Map<Line, Sodium> sodium = new LinkedHashMap<>();

  private record Line(SourceRow source, DepthRange depth) {
    static Line of(Sample sample) {
      return new Line(sample.source(), sample.depth());
    }
  }

  public PropertyHandOver(LayerReadings readings, BasisSettings settings) {
    this.settings = settings;
    // methods are in order, the paste first: it is the one that stays
    readings.measured().forEach(r -> ece.putIfAbsent(LayerKey.of(r.sample()), r.ece()));
    this.lines = oneALine(readings.clean());
    for (Sample sample : lines) {
      if (Sodium.isTold(sample)) {
        sodium.put(Line.of(sample), sodium(sample));
      }
    }
  }

  /** What each row says about sodium. */
  public List<Sodium> sodium() {
    return List.copyOf(sodium.values());
  }

  private Sodium sodium(Sample sample) {
    Double known = ece.get(LayerKey.of(sample));
    return Sodium.of(
        sample,
        known == null ? OptionalDouble.empty() : OptionalDouble.of(known),
        settings.options());
  }

  /** A line with two EC columns is two samples with the same other cells: one of them speaks. */
  private static Collection<Sample> oneALine(List<Sample> samples) {
    Map<Line, Sample> lines = new LinkedHashMap<>();
    for (Sample sample : samples) {
      lines.merge(
          Line.of(sample),
          sample,
          (first, second) -> IonBasis.of(second) == IonBasis.PASTE ? second : first);
    }
    return lines.values();
  }

  public SiteReadings property(SoilProperty property, Function<String, DepthRange> layer) {
    List<PropertyReadings.Value> values = new ArrayList<>();
    for (Sample sample : lines) {
      value(sample, property).ifPresent(v -> values.add(new PropertyReadings.Value(sample, v)));
    }
    return handOver(
        new PropertyReadings(property.label(), property.unit(), property.scale(), error(property)),
        values,
        field -> within(layer.apply(field)));
  }

  private static DoubleBinaryOperator within(DepthRange layer) {
    return (top, bottom) ->
        Math.max(0, Math.min(bottom, layer.bottomCm()) - Math.max(top, layer.topCm()));
  }

  public SiteReadings own(
      String name, String unit, Scale scale, Function<String, RootZone> rootZone) {
    List<PropertyReadings.Value> values = new ArrayList<>();
    for (Sample sample : lines) {
      sample.extras().property().ifPresent(v -> values.add(new PropertyReadings.Value(sample, v)));
    }
    return handOver(
        new PropertyReadings(name, unit, scale, new ReadingError(0, 0)),
        values,
        field -> rootZone.apply(field)::weight);
  }

  private SiteReadings handOver(
      PropertyReadings readings,
      List<PropertyReadings.Value> values,
      Function<String, DoubleBinaryOperator> weights) {
    Campaigns campaigns = new Campaigns(settings.options());
    List<PropertyReadings.Value> newest = campaigns.newest(values, PropertyReadings.Value::sample);
    SiteReadings out = readings.over(newest, weights);
    List<Finding> all = new ArrayList<>(campaigns.findings());
    all.addAll(Composites.unused(out.property(), newest));
    all.addAll(out.findings());
    return new SiteReadings(
        out.property(),
        out.unit(),
        out.scale(),
        out.sites(),
        out.rows(),
        out.offsets(),
        out.offsetCovariance(),
        all);
  }

  private ReadingError error(SoilProperty property) {
    LaboratoryErrors errors = settings.laboratoryErrors();
    return switch (property) {
      case SAR -> errors.sar();
      case CEC -> errors.cec();
      case ESP -> new ReadingError(errors.cec().shared(), property.ownError());
      default -> new ReadingError(0, property.ownError());
    };
  }

  private OptionalDouble value(Sample sample, SoilProperty property) {
    return switch (property) {
      case SAR, ESP -> ofSodium(sample, property);
      case CEC -> sample.soil().cecCmolKg();
      case CLAY -> sample.soil().clayPct();
      case BULK_DENSITY -> sample.soil().bulkDensityMgM3();
      case SP -> sample.soil().spPct();
      case GYPSUM -> sample.soil().gypsumPct();
      case PH -> sample.soil().ph();
      case BORON -> inPaste(sample, sample.ions().boronMgL());
      case CHLORIDE -> inPaste(sample, sample.ions().cl());
    };
  }

  private static OptionalDouble inPaste(Sample sample, OptionalDouble value) {
    return IonBasis.of(sample) == IonBasis.PASTE ? value : OptionalDouble.empty();
  }

  private OptionalDouble ofSodium(Sample sample, SoilProperty property) {
    Sodium told = sodium.get(Line.of(sample));
    if (told == null) {
      return OptionalDouble.empty();
    }
    if (property == SoilProperty.SAR) {
      return floored(told.sar(), 0.1);
    }
    boolean fromSar = told.espSource() == Sodium.EspSource.SAR_OF_PASTE;
    return fromSar ? OptionalDouble.empty() : floored(told.espPct(), 0.5);
  }

  /** SAR and ESP may be 0; below these values nothing changes in any advice. */
  private static OptionalDouble floored(OptionalDouble value, double least) {
    return value.isPresent() ? OptionalDouble.of(Math.max(least, value.getAsDouble())) : value;
  }
}
