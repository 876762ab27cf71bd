package fieldsalt.pipeline;

import fieldsalt.read.Ranch;
import fieldsalt.read.field.FieldJobs;
import fieldsalt.read.job.JobDocument;
import fieldsalt.read.sample.PersonsWord;
import fieldsalt.surface.choice.SurfaceSettings;
import fieldsalt.surface.fit.SurfaceMethod;
import fieldsalt.zones.field.ZoneSettings;
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

  /** The same for a ranch that was read: the narrowest zones asked for, and confirmed readings. */
  static SurfaceSettings surface(FieldJobs jobs, Ranch ranch) {
    SurfaceSettings settings = surface(jobs.ranch());
    double widest =
        ranch.fields().stream()
            .mapToDouble(f -> surface(jobs.of(f.name())).maxCellM())
            .min()
            .orElse(settings.maxCellM());
    return new SurfaceSettings(
        settings.method(),
        settings.cellM(),
        widest,
        PersonsWord.confirmedIds(jobs.ranch(), ranch.samples()));
  }

  /** Another property than ECe has no crop's steps: it is divided into a number of zones. */
  static ZoneSettings zones(JobDocument job, boolean followFieldMean) {
    boolean other = !job.word("property.column").equals("ec");
    boolean byCrop = job.word("zones.by").equals("yield") || job.word("zones.by").equals("nrcs");
    String by = other && byCrop ? "count" : job.word("zones.by");
    int count = (int) job.number("zones.count").orElse(4);
    boolean one = by.equals("count") && count == 1;
    return new ZoneSettings(
        one ? ZoneSettings.By.YIELD : ZoneSettings.By.valueOf(by.toUpperCase(Locale.ROOT)),
        job.numbers("zones.breaks"),
        count,
        job.amount("zones.min-area-ha"),
        job.amount("zones.min-width-m"),
        followFieldMean || one,
        other ? job.text("property.unit").orElse("") : "dS/m");
  }
}
