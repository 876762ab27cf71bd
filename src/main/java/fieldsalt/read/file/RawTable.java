package fieldsalt.read.file;

import java.util.List;

/**
 * The cells of a table as text, before its header is found.
 *
 * @param rows in the file's order, blank ones left out
 * @param semicolons whether cells were divided by semicolons (then a comma in a number is more
 *     likely a decimal comma than one between thousands)
 */
public record RawTable(String file, List<TableRow> rows, boolean semicolons) {}
