package fieldsalt.plan.zone;

import fieldsalt.plan.draw.Odds;

/**
 * What salt lets the field's crop bring in a zone: percent of the same crop on good ground.
 *
 * @param expectedPct mean over the zone's distribution of ECe
 * @param pct the zone's mean yield with its odds
 * @param areaAboveHa sum over the area of the chance to be above the crop's threshold
 * @param threshold dS/m, raised by 2 on gypsiferous soil
 */
public record YieldOutlook(double expectedPct, Odds pct, double areaAboveHa, double threshold) {}
