package fieldsalt.read.site;

import fieldsalt.read.file.InputFile;
import fieldsalt.read.file.Notes;
import fieldsalt.read.job.JobDocument;
import fieldsalt.read.table.Columns;
import fieldsalt.read.table.Sheet;
import fieldsalt.read.table.SheetCells;
import fieldsalt.read.table.SheetLayout;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** Reads tables by the headers that the job names, and knows which of them no file has. */
public final class JobColumns {
  private final JobDocument job;
  private final Map<String, List<String>> headers = new LinkedHashMap<>();
  private final Set<String> found = new HashSet<>();

  public JobColumns(JobDocument job) {
    this.job = job;
    job.names("columns").forEach(ours -> headers.put(ours, job.texts("columns", ours)));
  }

  Sheet sheet(InputFile file, Notes notes) {
    Set<String> all = headers.values().stream().flatMap(List::stream).collect(Collectors.toSet());
    return SheetLayout.read(file, all, notes);
  }

  /**
   * The cells of a sheet by our names.
   *
   * @param aboutHeaders receives findings about headers
   * @param notes receives findings about cells
   */
  SheetCells cells(Sheet sheet, Notes aboutHeaders, Notes notes) {
    Columns columns = Columns.of(sheet, headers, aboutHeaders);
    found.addAll(columns.mappedHeaders());
    return new SheetCells(sheet, columns, notes);
  }

  /** Every header that no file has is a problem. */
  public void noteMissing(Notes notes) {
    headers.forEach(
        (ours, names) ->
            names.stream()
                .filter(name -> !found.contains(name))
                .forEach(
                    name ->
                        notes.problem(
                            job.place("columns", ours) + ", key columns." + ours,
                            "'" + name + "'",
                            "a header of one of the files",
                            "Write the header exactly as in the file.")));
  }
}
