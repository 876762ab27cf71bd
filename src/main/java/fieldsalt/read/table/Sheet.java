package fieldsalt.read.table;

import fieldsalt.read.file.TableRow;
import fieldsalt.read.word.HeaderText;
import java.util.List;

/**
 * A table with its header found.
 *
 * @param word what a row is called in messages: {@code row}, {@code feature} or {@code waypoint}
 * @param semicolons whether cells were divided by semicolons
 */
public record Sheet(
    String file, String word, List<HeaderText> headers, List<TableRow> rows, boolean semicolons) {}
