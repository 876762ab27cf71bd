package fieldsalt.handover.table;

import fieldsalt.quantity.Texture;
import fieldsalt.read.field.FieldBoundary;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;

/** A field's boundary as a feature. */
public final class Fields {
  private Fields() {}

  public static Feature of(FieldBoundary field) {
    Map<String, Object> properties = new LinkedHashMap<>();
    properties.put("field", field.name());
    properties.put("area_ha", Rounding.decimals(field.shapeM().getArea() / 10_000, 4));
    properties.put("crop", field.crop());
    properties.put("texture", texture(field.texture()));
    properties.put("clay_pct", field.clayPct());
    return new Feature(field.shapeM(), properties);
  }

  private static String texture(Texture texture) {
    return texture == Texture.UNKNOWN
        ? null
        : texture.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }
}
