package fieldsalt.pipeline;

import fieldsalt.read.job.JobDocument;
import fieldsalt.read.sample.PersonsWord;
import fieldsalt.read.sample.Sample;
import fieldsalt.surface.choice.SurfaceSettings;
import fieldsalt.surface.fit.SurfaceMethod;
import fieldsalt.zones.field.ZoneSettings;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/** The settings of the stages up to the zones, from the keys of a job. */
final class StageSettings {
  private StageSettings() {}

  static SurfaceSettings surface(JobDocument job) {
    SurfaceMethod method = SurfaceMethod.valueOf(job.word("method").toUpperCase(Locale.ROOT));
    double widest = Math.max(1, job.amount("zones.min-width-m") / 2);
    return new SurfaceSettings(method, job.number("cell-m"), widest, Set.of());
  }

  /** The same for readings of which a person has confirmed some. */
  static SurfaceSettings surface(JobDocument job, List<Sample> samples) {
    SurfaceSettings settings = surface(job);
    return new SurfaceSettings(
        settings.method(),
        settings.cellM(),
        settings.maxCellM(),
        PersonsWord.confirmedIds(job, samples));
  }

  /** Another property than ECe has no crop's steps: it is divided into a number of zones. */
  static ZoneSettings zones(JobDocument job, boolean followFieldMean) {
    boolean other = !job.word("property.column").equals("ec");
    boolean byCrop =
        !job.word("zones.by").equals("breaks") && !job.word("zones.by").equals("count");
    String by = other && byCrop ? "count" : job.word("zones.by");
    return new ZoneSettings(
        ZoneSettings.By.valueOf(by.toUpperCase(Locale.ROOT)),
        job.numbers("zones.breaks"),
        (int) job.number("zones.count").orElse(4),
        job.amount("zones.min-area-ha"),
        job.amount("zones.min-width-m"),
        followFieldMean,
        other ? job.text("property.unit").orElse("") : "dS/m");
  }
}
