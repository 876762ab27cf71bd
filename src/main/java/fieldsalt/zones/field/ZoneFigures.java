package fieldsalt.zones.field;

import java.util.OptionalDouble;

/**
 * What the cells of the map say about one zone.
 *
 * @param cells number of map cells whose centre lies in it; 0 for a zone smaller than a cell
 * @param chanceAbove mean over its cells of the chance to be above the field's limit, 0 to 1; of
 *     the nearest cell where it holds none
 * @param uncertainHa part of it where the chance to be above the class limit nearest in value, or
 *     above the limit of the second criterion, is between 0.2 and 0.8
 * @param median middle value of the cells' medians, dS/m (or the property's own unit)
 * @param secondChance mean over its cells of the chance to be above the second criterion's limit, 0
 *     to 1; empty without one
 */
public record ZoneFigures(
    int cells,
    double chanceAbove,
    double uncertainHa,
    double median,
    OptionalDouble secondChance) {}
