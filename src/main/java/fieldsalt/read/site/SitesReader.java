package fieldsalt.read.site;

import fieldsalt.read.file.InputFile;
import fieldsalt.read.file.Notes;
import fieldsalt.read.file.TableRow;
import fieldsalt.read.sample.Spot;
import fieldsalt.read.sample.SpotCells;
import fieldsalt.read.table.Gpx;
import fieldsalt.read.table.Sheet;
import fieldsalt.read.table.SheetCells;
import java.util.Optional;

/** Reads a file of sites: id and place, from a table, GeoJSON or GPX. */
public final class SitesReader {
  private SitesReader() {}

  /**
   * The sites of a file; x and y are in the job's system.
   *
   * @param local whether coordinates are metres of no place on earth
   */
  public static SiteList read(InputFile file, JobColumns columns, boolean local, Notes notes) {
    Sheet sheet = Gpx.isGpx(file) ? Gpx.read(file) : columns.sheet(file, notes);
    SheetCells cells = columns.cells(sheet, new Notes(), notes);
    SiteList sites = new SiteList(file.name());
    if (!cells.has("id") || !cells.hasPlaces()) {
      notes.problem(
          file.name(),
          cells.has("id") ? "no coordinates" : "no column of ids",
          "columns id, lon, lat (or x, y with crs)",
          "Name your columns in the job: columns: {id: ..., lon: ..., lat: ...}.");
      return sites;
    }
    SpotCells spots = new SpotCells(cells, local, notes);
    for (TableRow row : cells.rows()) {
      Optional<Spot> spot = spots.of(row);
      spot.ifPresent(s -> sites.add(spots.id(row, spot), s, cells.source(row), notes));
    }
    return sites;
  }
}
