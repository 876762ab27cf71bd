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
import java.util.stream.Collectors;

/**
 * All that the files say about a ranch, in metres of one projection.
 *
 * @param samples every usable row, with its field
 * @param zones that the user gives, by name; empty if none are
 * @param hashes file name to SHA-256 of its bytes, of every file read, sorted
 * @param findings what was corrected or left out
 * @param samplesByField the samples of each field that has some, in the order of the rows
 */
public record Ranch(
    String name,
    RanchProjection projection,
    List<FieldBoundary> fields,
    List<Sample> samples,
    List<SurveyReading> survey,
    List<FieldBoundary> zones,
    Map<String, String> hashes,
    List<Finding> findings,
    Map<String, List<Sample>> samplesByField) {
  public Ranch {
    fields = List.copyOf(fields);
    samples = List.copyOf(samples);
    survey = List.copyOf(survey);
    zones = List.copyOf(zones);
    hashes = Collections.unmodifiableMap(new TreeMap<>(hashes));
    findings = List.copyOf(findings);
    samplesByField = Map.copyOf(samplesByField);
  }

  /** A ranch whose samples are put in order by their field. */
  public Ranch(
      String name,
      RanchProjection projection,
      List<FieldBoundary> fields,
      List<Sample> samples,
      List<SurveyReading> survey,
      Map<String, String> hashes,
      List<Finding> findings) {
    this(
        name,
        projection,
        fields,
        samples,
        survey,
        List.of(),
        hashes,
        findings,
        samples.stream().collect(Collectors.groupingBy(Sample::field)));
  }

  /** The same with zones that the user gives. */
  Ranch withZones(List<FieldBoundary> given) {
    return new Ranch(
        name, projection, fields, samples, survey, given, hashes, findings, samplesByField);
  }

  /** One field of it, with its samples; the survey stays that of the ranch. */
  public Ranch only(FieldBoundary field) {
    List<Sample> own = samplesOf(field.name());
    return new Ranch(
        name,
        projection,
        List.of(field),
        own,
        survey,
        List.of(),
        hashes,
        findings,
        Map.of(field.name(), own));
  }

  /** The samples of a field; none for one that has none. */
  public List<Sample> samplesOf(String field) {
    return samplesByField.getOrDefault(field, List.of());
  }
}
