package fieldsalt.read.site;

import fieldsalt.finding.Code;
import fieldsalt.finding.Place;
import fieldsalt.read.file.Notes;
import fieldsalt.read.file.SourceRow;
import fieldsalt.read.sample.Spot;
import fieldsalt.read.sample.UnplacedSample;
import fieldsalt.read.word.PlainText;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** Coordinates by id from a second file, and which ids were asked for. */
public final class SiteList {
  private final String file;
  private final Map<String, Site> sites = new LinkedHashMap<>();
  private final Set<String> asked = new TreeSet<>();

  private record Site(String id, Spot spot) {}

  SiteList(String file) {
    this.file = file;
  }

  /** No file of sites. */
  public static SiteList none() {
    return new SiteList("");
  }

  /** Adds a site; a second, different place for an id is a finding and not used. */
  void add(String id, Spot spot, SourceRow source, Notes notes) {
    Site before = sites.putIfAbsent(key(id), new Site(id, spot));
    if (before != null && !before.spot().equals(spot)) {
      notes.row(
          Code.SITE_TWICE,
          source,
          "a second place for the site '" + PlainText.cut(id) + "'",
          "not used; the first place is used");
    }
  }

  private static String key(String id) {
    return id.strip().toLowerCase(Locale.ROOT);
  }

  /** The ids, lower case. */
  public Set<String> keys() {
    return sites.keySet();
  }

  /** The place of an id, blind to case and blanks around it. */
  private Optional<Spot> spot(String id) {
    asked.add(key(id));
    return Optional.ofNullable(sites.get(key(id))).map(Site::spot);
  }

  /** Samples without a place get that of their id; ids without a partner are findings. */
  public List<UnplacedSample> joined(List<UnplacedSample> samples, Notes notes) {
    List<UnplacedSample> placed = new ArrayList<>();
    Set<String> without = new TreeSet<>();
    for (UnplacedSample each : samples) {
      Optional<Spot> site = spot(each.sample().id());
      Optional<Spot> spot = each.spot().or(() -> site);
      if (spot.isEmpty() && !each.sample().composite()) {
        without.add(each.sample().id());
      }
      placed.add(each.at(spot));
    }
    if (!sites.isEmpty()) {
      noteUnmatched(without, notes);
    }
    return placed;
  }

  private void noteUnmatched(Set<String> samplesWithout, Notes notes) {
    if (!samplesWithout.isEmpty()) {
      notes.finding(
          Code.SAMPLES_WITHOUT_SITE,
          Place.file(file),
          "no coordinates for the samples " + String.join(", ", samplesWithout),
          "left out; compare the ids, or strip their endings with id-pattern in the job");
    }
    List<String> unused =
        sites.entrySet().stream()
            .filter(e -> !asked.contains(e.getKey()))
            .map(e -> e.getValue().id())
            .toList();
    if (!unused.isEmpty()) {
      notes.finding(
          Code.SITES_WITHOUT_SAMPLE,
          Place.file(file),
          "no sample for the sites " + String.join(", ", unused),
          "not used");
    }
  }
}
