package fieldsalt.pipeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.MappingIterator;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.dataformat.csv.CsvMapper;
import com.fasterxml.jackson.dataformat.csv.CsvSchema;
import fieldsalt.cli.Run;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * One number, one meaning: every figure that stands in two places is the same in both, and every
 * total is the sum of what is planned. Five invented ranches: the sample with prices; in zones by
 * sodicity; the least that is needed; fields with settings of their own, without prices; the same
 * with a draft and with sodium that nobody measured.
 */
class IdentitiesTest {
  @TempDir static Path temp;

  private JsonNode record;
  private final Map<String, JsonNode> zones = new LinkedHashMap<>();
  private final Map<String, JsonNode> forMachines = new LinkedHashMap<>();
  private List<Map<String, String>> rates;
  private List<Map<String, String>> crops;
  private String page;

  private static String[] words(String ranch) throws IOException {
    return switch (ranch) {
      case "sample" -> new String[] {"sample-fields/ranch/job.yaml"};
      case "sodic" -> new String[] {"sample-fields/ranch/job.yaml", "--set", "zones.sodicity=yes"};
      case "small" -> new String[] {"sample-fields/small/job.yaml"};
      default -> new String[] {twoFields(ranch).toString()};
    };
  }

  /** Two fields, the east with poor drainage where a draft is asked for, and without sodium. */
  private static Path twoFields(String ranch) throws IOException {
    boolean draft = ranch.equals("draft");
    Path folder = Files.createDirectories(temp.resolve("of-" + ranch));
    String field =
        "{\"type\":\"Feature\",\"properties\":{\"field\":\"%s\"},\"geometry\":{\"type\":"
            + "\"Polygon\",\"coordinates\":[[[%d,0],[%d,0],[%d,300],[%d,300],[%d,0]]]}}";
    Files.writeString(
        folder.resolve("fields.geojson"),
        "{\"type\":\"FeatureCollection\",\"features\":["
            + String.format(field, "west", 0, 400, 400, 0, 0)
            + ","
            + String.format(field, "east", 500, 900, 900, 500, 500)
            + "]}");
    StringBuilder rows = new StringBuilder("id,x,y,depth,method,ec,unit,sar,texture\n");
    for (int i = 0; i < 40; i++) {
      double x = 40 + 80 * (i % 5);
      double y = 35 + 75 * (Math.floor(i / 5.0) % 4);
      rows.append(
          String.format(
              Locale.ROOT,
              "S%02d,%.0f,%.0f,0-120 cm,paste,%.2f,dS/m,%s,clay loam%n",
              i,
              i < 20 ? x : x + 500,
              y,
              3 + 8 * x / 400 + 0.5 * Math.sin(y / 40),
              draft && i >= 20 ? "" : String.valueOf(10 + (int) (x / 20))));
    }
    Files.writeString(folder.resolve("samples.csv"), rows);
    return Files.writeString(
        folder.resolve("job.yaml"),
        """
        fields: fields.geojson
        samples: samples.csv
        crs: local
        cell-m: 10
        crop: alfalfa
        water: {ec-dS-m: 1.2, sar: 4, season-et-mm: 900, rain-mm: 100}
        drainage: good
        gypsum: {purity-pct: 85}
        by-field: {east: {crop: cotton, drainage: %s}}
        """
            .formatted(draft ? "poor" : "good"));
  }

  private void read(String ranch) throws IOException {
    Path out = temp.resolve(ranch);
    List<Object> words = new ArrayList<>(List.of("map"));
    words.addAll(List.of(words(ranch)));
    words.addAll(List.of("-o", out, "--quiet"));
    Run run = Run.of(words.toArray());
    assertThat(run.code()).as(run.err()).isZero();
    ObjectMapper json = new ObjectMapper();
    record = json.readTree(out.resolve("run.json").toFile());
    for (JsonNode f : json.readTree(out.resolve("zones.geojson").toFile()).path("features")) {
      zones.put(f.path("properties").path("zone").asText(), f.path("properties"));
    }
    for (JsonNode f : json.readTree(out.resolve("rates.geojson").toFile()).path("features")) {
      forMachines.put(f.path("properties").path("zone").asText(), f.path("properties"));
    }
    rates = table(out.resolve("rates.csv"));
    crops = table(out.resolve("crops.csv"));
    page = Files.readString(out.resolve("report.html"));
  }

  private static List<Map<String, String>> table(Path file) throws IOException {
    try (MappingIterator<Map<String, String>> rows =
        new CsvMapper()
            .readerForMapOf(String.class)
            .with(CsvSchema.emptySchema().withHeader())
            .readValues(file.toFile())) {
      return rows.readAll();
    }
  }

  private static double number(Map<String, String> row, String column) {
    return row.get(column).isEmpty() ? 0 : Double.parseDouble(row.get(column));
  }

  private JsonNode inRecord(String zone) {
    for (JsonNode z : record.path("zones")) {
      if (z.path("zone").asText().equals(zone)) {
        return z;
      }
    }
    throw new AssertionError("no zone " + zone + " in run.json");
  }

  @ParameterizedTest
  @ValueSource(strings = {"sample", "sodic", "small", "priceless", "draft"})
  void everyFigureIsTheSameEverywhere(String ranch) throws IOException {
    read(ranch);
    areasAddUp();
    ratesAreThoseOfTheZones();
    totalsAreSums();
    cropsAreThoseOfTheZones();
    pageShowsTheSame();
  }

  private void areasAddUp() {
    Map<String, Double> byField = new LinkedHashMap<>();
    for (JsonNode z : record.path("zones")) {
      byField.merge(z.path("field").asText(), z.path("area_ha").asDouble(), Double::sum);
    }
    for (JsonNode f : record.path("fields")) {
      double ha = f.path("area_ha").asDouble();
      if (f.path("mapped").asBoolean()) {
        assertThat(byField.get(f.path("field").asText())).isCloseTo(ha, within(1e-6 * ha));
      }
    }
  }

  private void ratesAreThoseOfTheZones() {
    assertThat(rates).hasSameSizeAs(zones.keySet());
    for (Map<String, String> row : rates) {
      JsonNode zone = zones.get(row.get("zone"));
      double ha = inRecord(row.get("zone")).path("area_ha").asDouble();
      assertThat(number(row, "area_ha"))
          .isEqualTo(zone.path("area_ha").asDouble())
          .isCloseTo(ha, within(0.00006));
      if (zone.path("gypsum_t_ha").isNull()) {
        assertThat(row.get("gypsum_t_ha_needed")).isEmpty();
      } else {
        double rate = zone.path("gypsum_t_ha").asDouble();
        assertThat(number(row, "gypsum_t_ha_per_pass") * number(row, "passes"))
            .isCloseTo(rate, within(0.01));
        assertThat(number(row, "gypsum_t")).isCloseTo(rate * ha, within(0.006 * ha + 0.006));
        assertThat(number(row, "gypsum_t_ha_needed"))
            .isCloseTo(zone.path("gypsum_t_ha_needed").asDouble(), within(0.0051));
        assertThat(zone.path("gypsum_t_ha_needed").asDouble())
            .isBetween(
                zone.path("gypsum_t_ha_low").asDouble(), zone.path("gypsum_t_ha_high").asDouble());
      }
      assertThat(number(row, "leaching_mm"))
          .isCloseTo(zone.path("leaching_mm").asDouble(), within(1e-9));
      assertThat(row.get("draft").equals("yes")).isEqualTo(zone.path("draft").asBoolean());
      JsonNode forMachine = forMachines.get(row.get("zone"));
      assertThat(forMachine.path("draft").asText()).isEqualTo(row.get("draft"));
      assertThat(forMachine.path("rate").isNull())
          .isEqualTo(row.get("gypsum_t_ha_per_pass").isEmpty());
      assertThat(forMachine.path("rate").asDouble())
          .isCloseTo(number(row, "gypsum_t_ha_per_pass"), within(0.0051));
      assertThat(row.get("first_step")).isEqualTo(zone.path("first_step").asText());
      if (zone.path("draft").asBoolean()) {
        assertThat(zone.path("rate_t_ha").asDouble()).as("a draft on the machine").isZero();
      }
      assertThat(zone.path("ece_dS_m").asDouble())
          .isBetween(zone.path("ece_low").asDouble(), zone.path("ece_high").asDouble());
    }
  }

  private void totalsAreSums() {
    double tonnes = 0;
    double water = 0;
    double cost = 0;
    for (Map<String, String> row : rates) {
      double ha = inRecord(row.get("zone")).path("area_ha").asDouble();
      tonnes += number(row, "gypsum_t");
      water += 10 * ha * number(row, "leaching_mm");
      cost += ha * number(row, "cost_per_ha");
    }
    JsonNode plan = record.path("plan");
    assertThat(plan.path("planned_t").asDouble()).isCloseTo(tonnes, within(0.006 * rates.size()));
    double slack = rates.stream().mapToDouble(r -> 0.51 * number(r, "area_ha")).sum() + 0.1;
    assertThat(plan.path("planned_m3").asDouble()).isCloseTo(water, within(slack));
    assertThat(plan.path("expected_cost").asDouble())
        .isCloseTo(cost, within(0.0051 * slack * 2 + 0.01));
  }

  /** The crop that a field grows has in crops.csv the yield of its zones. */
  private void cropsAreThoseOfTheZones() {
    Map<String, String> grown = new LinkedHashMap<>();
    for (JsonNode f : record.path("fields")) {
      grown.put(f.path("field").asText(), f.path("crop").asText());
    }
    zones.forEach(
        (name, zone) -> {
          for (Map<String, String> crop : crops) {
            if (crop.get("crop").equals(grown.get(zone.path("field").asText()))) {
              assertThat(number(crop, name + "_yield_pct"))
                  .as(crop.get("crop") + " in " + name)
                  .isCloseTo(zone.path("yield_pct").asDouble(), within(0.051));
            }
          }
        });
    for (Map<String, String> crop : crops) {
      double sum = 0;
      double ha = 0;
      for (String name : zones.keySet()) {
        double area = inRecord(name).path("area_ha").asDouble();
        sum += area * number(crop, name + "_yield_pct");
        ha += area;
      }
      if (!crop.get("ranch_yield_pct").isEmpty()) {
        assertThat(number(crop, "ranch_yield_pct")).isCloseTo(sum / ha, within(0.11));
      }
    }
  }

  /** Two figures of the mean of each zone, its plan and the totals, as the page writes them. */
  private void pageShowsTheSame() {
    String text =
        page.replaceAll("(?s)<(style|script|svg).*?</\\1>", "").replaceAll("<[^>]+>", "\n");
    for (JsonNode z : record.path("zones")) {
      String name = z.path("zone").asText();
      Matcher cell =
          Pattern.compile(Pattern.quote(name) + "\\s+[\\d.,]+.ha\\s+([\\d.]+) \\(").matcher(text);
      assertThat(cell.find()).as(name + " on the page").isTrue();
      double mean = z.path("ece_dS_m").asDouble();
      assertThat(Double.parseDouble(cell.group(1))).isCloseTo(mean, within(0.051 * mean));
      Matcher why =
          Pattern.compile(Pattern.quote(name) + "\\s(?s:.{0,400}?): ECe ([\\d.]+)").matcher(text);
      assertThat(why.find()).as(name + " why").isTrue();
      assertThat(why.group(1)).as("the mean of " + name).isEqualTo(cell.group(1));
    }
  }
}
