package fieldsalt.sample;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.quantity.Method;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** The committed sample fields and what they are made of. */
class SampleFieldsTest {
  private final InventedRanch ranch = InventedRanch.ofThree(SampleFields.RANCH_SEED);

  @Test
  void committedFilesAreWhatTheGeneratorMakes() throws IOException {
    assertSame(Path.of("sample-fields/ranch"), SampleFields.ranch(SampleFields.RANCH_SEED));
    assertSame(Path.of("sample-fields/small"), SampleFields.small(SampleFields.SMALL_SEED));
  }

  private static void assertSame(Path folder, Map<String, String> files) throws IOException {
    for (Map.Entry<String, String> file : files.entrySet()) {
      assertThat(Files.readString(folder.resolve(file.getKey())))
          .as(folder + "/" + file.getKey())
          .isEqualTo(file.getValue());
    }
  }

  @Test
  void fieldsHaveTheirSizes() {
    assertThat(hectares("north")).isCloseTo(60, within(1.5));
    assertThat(hectares("creek")).isCloseTo(35, within(1.5));
    assertThat(hectares("garden")).isCloseTo(6, within(0.3));
    assertThat(ranch.field("creek").shapeM().getNumInteriorRing()).isEqualTo(1);
    assertThat(ranch.survey().size()).isBetween(6_000, 6_700);
  }

  private double hectares(String field) {
    return ranch.field(field).shapeM().getArea() / 10_000;
  }

  @Test
  void sitesAndPairsAreAsMany() {
    assertThat(sites("north", null)).hasSize(45);
    assertThat(sites("north", Method.ONE_TO_FIVE)).hasSize(42);
    assertThat(paired("north", Method.ONE_TO_FIVE)).hasSize(12);
    assertThat(sites("creek", Method.ONE_TO_ONE)).hasSize(24);
    assertThat(paired("creek", Method.ONE_TO_ONE)).hasSize(4);
    assertThat(sites("garden", Method.PASTE)).hasSize(7);
    assertThat(ranch.rows().stream().filter(r -> r.other().containsKey("sar")).count())
        .isGreaterThanOrEqualTo(36);
  }

  private List<String> sites(String field, Method method) {
    return ranch.rows().stream()
        .filter(r -> r.field().equals(field) && (method == null || r.method() == method))
        .map(LabRow::id)
        .distinct()
        .toList();
  }

  private List<String> paired(String field, Method method) {
    List<String> pastes = sites(field, Method.PASTE);
    return sites(field, method).stream().filter(pastes::contains).toList();
  }

  @Test
  void blemishesAreFive() {
    List<LabRow> rows = Blemishes.of(ranch);
    assertThat(rows).hasSize(ranch.rows().size() + 1);
    assertThat(rows.stream().filter(r -> r.ec().equals("ND"))).hasSize(1);
    assertThat(rows.stream().filter(r -> r.unit().isEmpty())).hasSize(1);
    assertThat(rows.stream().filter(r -> r.ec().equals("4000") && r.unit().equals("dS/m")))
        .hasSize(1);
    assertThat(rows.stream().collect(Collectors.groupingBy(r -> r, Collectors.counting())))
        .containsValue(2L);
    assertThat(rows.stream().filter(this::outside).map(LabRow::id).distinct()).hasSize(1);
  }

  private boolean outside(LabRow row) {
    var point =
        ranch
            .field(row.field())
            .shapeM()
            .getFactory()
            .createPoint(
                new org.locationtech.jts.geom.Coordinate(row.place().xM(), row.place().yM()));
    return ranch.field(row.field()).shapeM().distance(point) > 2.9;
  }

  @Test
  void truthHasTheStatedCovariance() {
    double[] lags = {0, 50, 250};
    double[] sums = new double[lags.length];
    int draws = 1_500;
    var random = new java.util.Random(3);
    for (int i = 0; i < draws; i++) {
      var field = new ExponentialField(random, 0.45, 250);
      for (int k = 0; k < lags.length; k++) {
        sums[k] += field.at(40, 70) * field.at(40 + 0.6 * lags[k], 70 - 0.8 * lags[k]) / draws;
      }
    }
    double band = 3 * 0.45 * Math.sqrt(2.0 / draws);
    assertThat(sums[0]).isCloseTo(0.45, within(band));
    assertThat(sums[1]).isCloseTo(0.45 * Math.exp(-0.2), within(band));
    assertThat(sums[2]).isCloseTo(0.45 * Math.exp(-1), within(band));
  }

  @Test
  void layersAverageToTheBag() {
    List<LabRow> pastes = ranch.rows().stream().filter(r -> r.field().equals("garden")).toList();
    double squared = 0;
    for (String id : pastes.stream().map(LabRow::id).distinct().toList()) {
      double mean =
          pastes.stream()
              .filter(r -> r.id().equals(id))
              .mapToDouble(r -> r.dSPerM() * r.depth().thicknessCm() / 90)
              .sum();
      var place = pastes.stream().filter(r -> r.id().equals(id)).findFirst().orElseThrow().place();
      squared += Math.pow(Math.log(mean) - ranch.lnEce("garden", place.xM(), place.yM()), 2) / 7;
    }
    assertThat(Math.sqrt(squared)).isLessThan(3 * Math.hypot(0.15, Math.hypot(0.1, 0.07)));
  }
}
