package fieldsalt.read.site;

import fieldsalt.read.file.InputFile;
import fieldsalt.read.file.Notes;
import fieldsalt.read.job.JobDocument;
import fieldsalt.read.sample.ParsedRow;
import fieldsalt.read.sample.ReadingRules;
import fieldsalt.read.sample.RowParser;
import fieldsalt.read.table.Columns;
import fieldsalt.read.table.Gpx;
import fieldsalt.read.table.Sheet;
import fieldsalt.read.table.SheetLayout;
import java.util.Map;
import java.util.Set;

/** Reads a file of sites: id and place, from a table, GeoJSON or GPX. */
public final class SitesReader {
  private SitesReader() {}

  /** The sites of a file; x and y are in the job's system. */
  public static SiteList read(InputFile file, JobDocument job, Set<String> mapped, Notes notes) {
    Sheet sheet = Gpx.isGpx(file) ? Gpx.read(file) : SheetLayout.read(file, allHeaders(job), notes);
    ReadingRules rules = new ReadingRules(job, Set.of(), true);
    Columns columns = Columns.of(sheet, rules.mapping(), new Notes());
    mapped.addAll(columns.mappedHeaders());
    SiteList sites = new SiteList(file.name());
    boolean placed = sheet.lines().stream().anyMatch(l -> l.point().isPresent());
    boolean degrees = columns.has("lon") && columns.has("lat");
    boolean metres = columns.has("x") && columns.has("y");
    if (!columns.has("id") || !(placed || degrees || metres)) {
      notes.problem(
          file.name(),
          columns.has("id") ? "no coordinates" : "no column of ids",
          "columns id, lon, lat (or x, y with crs)",
          "Name your columns in the job: columns: {id: ..., lon: ..., lat: ...}.");
      return sites;
    }
    for (ParsedRow line : new RowParser(sheet, columns, rules, notes).read()) {
      line.spot().ifPresent(spot -> sites.add(line.id(), spot, line.source(), notes));
    }
    return sites;
  }

  /** Every header that the job maps, to find header lines by. */
  static Set<String> allHeaders(JobDocument job) {
    Map<String, java.util.List<String>> mapping = new ReadingRules(job, Set.of(), true).mapping();
    Set<String> all = new java.util.HashSet<>();
    mapping.values().forEach(all::addAll);
    return all;
  }
}
