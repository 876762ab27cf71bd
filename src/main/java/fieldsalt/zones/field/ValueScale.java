package fieldsalt.zones.field;

import fieldsalt.surface.map.SurfaceMap;

/** The scale on which zones measure closeness and interpolate: logarithm where that is possible. */
enum ValueScale {
  LOG,
  NATURAL;

  /** Logarithm if every value of the map is positive. */
  static ValueScale of(SurfaceMap map) {
    for (float median : map.median()) {
      if (median <= 0) {
        return NATURAL;
      }
    }
    return LOG;
  }

  double apply(double value) {
    return this == NATURAL ? value : value > 0 ? Math.log(value) : Double.NEGATIVE_INFINITY;
  }

  double back(double scaled) {
    return this == NATURAL ? scaled : Math.exp(scaled);
  }
}
