package fieldsalt.basis.layer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fieldsalt.basis.Basis;
import fieldsalt.basis.Samples;
import fieldsalt.basis.pair.ConvertedReadings;
import fieldsalt.basis.setting.BasisSettings;
import fieldsalt.quantity.EcUnit;
import fieldsalt.quantity.Method;
import fieldsalt.quantity.ReadingKind;
import fieldsalt.quantity.Texture;
import fieldsalt.read.sample.Sample;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.function.Function;
import java.util.stream.Collectors;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;

/** What holds for every sheet. */
class ConversionProperties {
  private static List<Sample> sheet(long seed, int sites, int pairs) {
    Random random = new Random(seed);
    Texture[] textures = {Texture.LOAM, Texture.CLAY, Texture.SANDY_LOAM, Texture.UNKNOWN};
    List<Sample> rows = new ArrayList<>();
    for (int i = 0; i < sites; i++) {
      double ec = Math.exp(-0.7 + 0.8 * random.nextGaussian());
      Texture texture = textures[random.nextInt(textures.length)];
      double paste = 9 * ec * Math.exp(0.25 * random.nextGaussian());
      rows.add(Samples.sample().id("S" + i).texture(texture).ec(ec).row(2 * i + 2).get());
      if (i < pairs) {
        rows.add(Samples.sample().id("S" + i).texture(texture).paste(paste).row(2 * i + 3).get());
      }
    }
    return rows;
  }

  @Property(tries = 40, shrinking = ShrinkingMode.OFF)
  void unitsNeverChangeAResult(
      @ForAll @DoubleRange(min = 0.02, max = 10) double dSPerM, @ForAll EcUnit unit) {
    double there = dSPerM / unit.dSPerM();
    Sample inUnit = Samples.sample().ec(there * unit.dSPerM()).get();
    Sample inDsM = Samples.sample().ec(dSPerM).get();
    ConvertedReadings.Row a =
        Basis.of(List.of(inUnit), BasisSettings.defaults()).converted().rows().get(0);
    ConvertedReadings.Row b =
        Basis.of(List.of(inDsM), BasisSettings.defaults()).converted().rows().get(0);
    assertThat(a.ece()).isCloseTo(b.ece(), within(1e-12 * b.ece()));
    assertThat(a.high()).isCloseTo(b.high(), within(1e-12 * b.high()));
  }

  @Property(tries = 40, shrinking = ShrinkingMode.OFF)
  void orderOfRowsNeverMatters(
      @ForAll long seed, @ForAll @IntRange(min = 1, max = 12) int sites, @ForAll long shuffle) {
    List<Sample> rows = sheet(seed, sites, sites / 2);
    List<Sample> other = new ArrayList<>(rows);
    Collections.shuffle(other, new Random(shuffle));
    assertThat(Basis.of(other, BasisSettings.defaults()).converted())
        .isEqualTo(Basis.of(rows, BasisSettings.defaults()).converted());
  }

  @Property(tries = 40, shrinking = ShrinkingMode.OFF)
  void morePairsNeverWidenAnInterval(
      @ForAll long seed, @ForAll @IntRange(min = 0, max = 9) int pairs) {
    Function<ConvertedReadings, java.util.Map<String, Double>> widths =
        c ->
            c.rows().stream()
                .collect(
                    Collectors.toMap(
                        r -> r.sample().id() + r.method(), r -> Math.log(r.high() / r.low())));
    var fewer =
        widths.apply(Basis.of(sheet(seed, 10, pairs), BasisSettings.defaults()).converted());
    // the same draws: a sheet with more pairs has the same readings and one paste more
    var more =
        widths.apply(Basis.of(sheet(seed, 10, pairs + 1), BasisSettings.defaults()).converted());
    fewer.forEach((row, width) -> assertThat(more.get(row)).isLessThanOrEqualTo(width + 1e-12));
    assertThat(more).hasSize(fewer.size() + 1);
  }

  @Property(tries = 300, shrinking = ShrinkingMode.OFF)
  void eceRisesWithEc(
      @ForAll Texture texture,
      @ForAll Method method,
      @ForAll ReadingKind kind,
      @ForAll @DoubleRange(min = 0.06, max = 10) double ec,
      @ForAll @DoubleRange(min = 1.01, max = 1.4) double times,
      @ForAll boolean gypsum) {
    if (method == Method.PASTE && kind == ReadingKind.SLURRY) {
      return;
    }
    Function<Double, Double> ece =
        x -> {
          Samples s = Samples.sample().method(method, kind).texture(texture).ec(x);
          Sample row = gypsum ? s.gypsum(3).get() : s.get();
          return Basis.of(List.of(row), BasisSettings.defaults()).converted().rows().get(0).ece();
        };
    assertThat(ece.apply(ec * times)).isGreaterThan(ece.apply(ec));
  }
}
