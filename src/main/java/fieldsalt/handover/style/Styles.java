package fieldsalt.handover.style;

import fieldsalt.basis.site.SiteReadings;
import fieldsalt.handover.input.Palette;
import fieldsalt.handover.input.SurfaceLabels;
import fieldsalt.handover.input.ZoneFeature;
import fieldsalt.handover.raster.GeoTiffWriter;
import fieldsalt.handover.table.Rounding;
import fieldsalt.handover.table.Xml;
import fieldsalt.surface.map.SurfaceMap;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Styled Layer Descriptors 1.0.0 (OGC 02-070) in the product's ramp: zones by class (dotted where a
 * second criterion sets them apart), the median and the chance by colour; the error as a grey veil
 * that thickens where the map is less sure.
 */
public final class Styles {
  private static final double[] ECE_STEPS = {0, 2, 4, 8, 16, 32};
  private static final String VEIL = "#808080";

  /** Over the colour of a zone that a second criterion sets apart. */
  private static final String DOTS =
      """
      <PolygonSymbolizer>
        <Fill>
          <GraphicFill>
            <Graphic>
              <Mark>
                <WellKnownName>circle</WellKnownName>
                <Fill><CssParameter name="fill">#1e1a17</CssParameter></Fill>
                <Stroke>
                  <CssParameter name="stroke">#ffffff</CssParameter>
                  <CssParameter name="stroke-width">0.8</CssParameter>
                </Stroke>
              </Mark>
              <Size>5</Size>
            </Graphic>
          </GraphicFill>
        </Fill>
      </PolygonSymbolizer>
      """;

  private Styles() {}

  /** A rule a class of zone, in the order in which the zones first show them. */
  public static String zones(List<ZoneFeature> zones) {
    Map<String, ZoneFeature> first = new LinkedHashMap<>();
    for (ZoneFeature zone : zones) {
      first.putIfAbsent(zone.colour() + zone.zone().label() + fieldIfNeeded(zone, zones), zone);
    }
    StringBuilder rules = new StringBuilder();
    first.values().forEach(zone -> rules.append(rule(zone, fieldIfNeeded(zone, zones))));
    return document("zones", "<FeatureTypeStyle>\n" + rules + "</FeatureTypeStyle>\n");
  }

  /** The field's name where two fields draw the same class in different colours. */
  private static String fieldIfNeeded(ZoneFeature zone, List<ZoneFeature> zones) {
    boolean clash =
        zones.stream()
            .anyMatch(
                other ->
                    other.zone().label().equals(zone.zone().label())
                        && !other.colour().equals(zone.colour()));
    return clash ? zone.zone().field() : "";
  }

  private static String rule(ZoneFeature zone, String field) {
    String label = zone.zone().label();
    String title = field.isEmpty() ? label : field + ": " + label;
    String test =
        field.isEmpty()
            ? equal("class", label)
            : "<ogc:And>" + equal("class", label) + equal("field", field) + "</ogc:And>";
    return """
        <Rule>
          <Name>%s</Name>
          <Title>%s</Title>
          <ogc:Filter>%s</ogc:Filter>
          <PolygonSymbolizer>
            <Fill><CssParameter name="fill">%s</CssParameter></Fill>
            <Stroke>
              <CssParameter name="stroke">#3c3c3c</CssParameter>
              <CssParameter name="stroke-width">0.6</CssParameter>
            </Stroke>
          </PolygonSymbolizer>
        %s</Rule>
        """
        .formatted(
            Xml.escape(title),
            Xml.escape(title),
            test,
            zone.colour(),
            zone.marked() ? DOTS.indent(2) : "");
  }

  private static String equal(String property, String value) {
    return "<ogc:PropertyIsEqualTo><ogc:PropertyName>"
        + property
        + "</ogc:PropertyName><ogc:Literal>"
        + Xml.escape(value)
        + "</ogc:Literal></ogc:PropertyIsEqualTo>";
  }

  /** The median: NRCS limits for ECe, else six even steps over the values mapped. */
  public static String median(List<SurfaceMap> maps, SurfaceLabels labels) {
    double[] steps = labels.property().equals(SiteReadings.ECE) ? ECE_STEPS : evenSteps(maps);
    List<String> entries = new ArrayList<>();
    for (int i = 0; i < steps.length; i++) {
      double share = i / (double) (steps.length - 1);
      entries.add(entry(Palette.hex(share), 1, steps[i], number(steps[i]) + " " + labels.unit()));
    }
    return raster("ece", entries);
  }

  private static double[] evenSteps(List<SurfaceMap> maps) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (SurfaceMap map : maps) {
      for (float value : map.median()) {
        if (Float.isFinite(value)) {
          low = Math.min(low, value);
          high = Math.max(high, value);
        }
      }
    }
    double[] steps = new double[6];
    for (int i = 0; i < 6; i++) {
      steps[i] = low > high ? i : low + (high - low) * i / 5;
    }
    return steps;
  }

  /** The standard error: nothing at 0, nearly hidden at 1. */
  public static String error() {
    List<String> entries = new ArrayList<>();
    for (int i = 0; i <= 5; i++) {
      entries.add(entry(VEIL, i * 0.17, i * 0.2, number(i * 0.2)));
    }
    return raster("ece-error", entries);
  }

  public static String chance() {
    List<String> entries = new ArrayList<>();
    for (int i = 0; i <= 5; i++) {
      entries.add(entry(Palette.hex(i / 5.0), 1, i / 5.0, number(i * 20) + " %"));
    }
    return raster("p-above", entries);
  }

  private static String entry(String colour, double opacity, double quantity, String label) {
    return "<ColorMapEntry color=\"%s\" opacity=\"%s\" quantity=\"%s\" label=\"%s\"/>\n"
        .formatted(colour, number(opacity), number(quantity), Xml.escape(label.strip()));
  }

  private static String number(double value) {
    return Rounding.plain(value, 4);
  }

  private static String raster(String name, List<String> entries) {
    String nothing = entry("#ffffff", 0, GeoTiffWriter.NODATA, "outside the fields");
    return document(
        name,
        """
        <FeatureTypeStyle>
          <Rule>
            <RasterSymbolizer>
              <Opacity>1</Opacity>
              <ColorMap>
        %s</ColorMap>
            </RasterSymbolizer>
          </Rule>
        </FeatureTypeStyle>
        """
            .formatted(nothing + String.join("", entries)));
  }

  private static String document(String name, String style) {
    return """
        <?xml version="1.0" encoding="UTF-8"?>
        <StyledLayerDescriptor version="1.0.0" xmlns="http://www.opengis.net/sld"
            xmlns:ogc="http://www.opengis.net/ogc" xmlns:xlink="http://www.w3.org/1999/xlink"
            xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance">
          <NamedLayer>
            <Name>%s</Name>
            <UserStyle>
              <Name>%s</Name>
        %s    </UserStyle>
          </NamedLayer>
        </StyledLayerDescriptor>
        """
        .formatted(name, name, style);
  }
}
