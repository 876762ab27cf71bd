package fieldsalt.read;

import fieldsalt.finding.Finding;
import fieldsalt.geo.RanchProjection;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.read.sample.Sample;
import fieldsalt.read.site.SurveyReading;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * All that the files say about a ranch, in metres of one projection.
 *
 * @param samples every usable row, with its field
 * @param hashes file name to SHA-256 of its bytes, of every file read, sorted
 * @param findings what was mended or left out
 */
public record Ranch(
    String name,
    RanchProjection projection,
    List<FieldBoundary> fields,
    List<Sample> samples,
    List<SurveyReading> survey,
    Map<String, String> hashes,
    List<Finding> findings) {
  public Ranch {
    fields = List.copyOf(fields);
    samples = List.copyOf(samples);
    survey = List.copyOf(survey);
    hashes = Collections.unmodifiableMap(new TreeMap<>(hashes));
    findings = List.copyOf(findings);
  }
}
