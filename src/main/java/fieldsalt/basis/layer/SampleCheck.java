package fieldsalt.basis.layer;

import fieldsalt.basis.soil.Rows;
import fieldsalt.facts.Plausibility;
import fieldsalt.finding.Code;
import fieldsalt.finding.Finding;
import fieldsalt.read.sample.Ions;
import fieldsalt.read.sample.Sample;
import fieldsalt.read.sample.Soil;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Soil and ion columns against the limits of belief: what cannot be is taken out of the row, what
 * is unlikely is named and kept.
 */
final class SampleCheck {
  private final List<Finding> findings = new ArrayList<>();

  List<Finding> findings() {
    return List.copyOf(findings);
  }

  /** The row without its impossible cells. */
  Sample clean(Sample sample) {
    Cells cells = new Cells(sample);
    Soil s = sample.soil();
    Soil soil =
        new Soil(
            s.texture(),
            cells.check(s.clayPct(), "clay_pct"),
            cells.check(s.spPct(), "sp_pct"),
            cells.check(s.gypsumPct(), "gypsum_pct"),
            s.limePct(),
            s.omPct(),
            cells.bulkDensity(s.bulkDensityMgM3()),
            cells.check(s.cecCmolKg(), "cec_cmol_kg"),
            cells.check(s.ph(), "ph"));
    Ions i = sample.ions();
    Ions ions =
        new Ions(
            i.method(),
            cells.check(i.na(), "na_meq_l"),
            cells.check(i.ca(), "ca_meq_l"),
            cells.check(i.mg(), "mg_meq_l"),
            i.k(),
            i.cl(),
            i.so4(),
            i.hco3(),
            cells.check(i.boronMgL(), "b_mg_l"),
            cells.check(i.sar(), "sar"),
            cells.check(i.espPct(), "esp_pct"),
            i.naExtractableCmolKg(),
            i.atMost(),
            i.atLeast());
    depth(sample);
    Sample clean = cells.changed ? sample.withSoil(soil).withIons(ions) : sample;
    SpecialSoils.spAgainstTexture(clean).ifPresent(findings::add);
    return clean;
  }

  private void depth(Sample sample) {
    if (Plausibility.of("depth_cm").doubts(sample.depth().bottomCm())) {
      findings.add(
          Rows.finding(
              Code.DEEP_LAYER,
              sample,
              "a layer of " + Rows.depth(sample.depth()),
              "kept; are these centimetres?"));
    }
  }

  /** The cells of one row. */
  private final class Cells {
    private final Sample sample;
    private boolean changed;

    Cells(Sample sample) {
      this.sample = sample;
    }

    OptionalDouble check(OptionalDouble cell, String quantity) {
      if (cell.isEmpty()) {
        return cell;
      }
      Plausibility limits = Plausibility.of(quantity);
      double value = cell.getAsDouble();
      if (limits.refuses(value)) {
        return refused(quantity, value, limits.unit(), "it cannot be; the cell is not used");
      }
      if (limits.doubts(value)) {
        findings.add(
            Rows.finding(
                Code.UNLIKELY_VALUE,
                sample,
                found(quantity, value, limits.unit()),
                "kept; check it"));
      }
      return cell;
    }

    /** Bulk density has one slip of its own: kg/m3. */
    OptionalDouble bulkDensity(OptionalDouble cell) {
      double value = cell.orElse(0);
      return value >= 900 && value <= 2000
          ? refused("bulk_density", value, "Mg/m3", "it looks like kg/m3; the cell is not used")
          : check(cell, "bulk_density");
    }

    private OptionalDouble refused(String quantity, double value, String unit, String why) {
      changed = true;
      findings.add(Rows.finding(Code.IMPOSSIBLE_VALUE, sample, found(quantity, value, unit), why));
      return OptionalDouble.empty();
    }

    private String found(String quantity, double value, String unit) {
      return (quantity + " " + Rows.number(value) + " " + unit).trim();
    }
  }
}
