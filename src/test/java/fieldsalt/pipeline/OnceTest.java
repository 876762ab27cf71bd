package fieldsalt.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaMethod;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import fieldsalt.basis.Basis;
import fieldsalt.basis.depth.RootZone;
import fieldsalt.basis.depth.Uptake;
import fieldsalt.basis.layer.LayerReadings;
import fieldsalt.basis.property.SoilProperty;
import fieldsalt.basis.setting.BasisSettings;
import fieldsalt.quantity.DepthRange;
import fieldsalt.read.RanchReader;
import fieldsalt.read.job.JobDocument;
import fieldsalt.read.sample.Sample;
import fieldsalt.surface.SampledProperty;
import fieldsalt.surface.SurfaceFitter;
import java.nio.file.Path;
import java.util.AbstractList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** Each row is converted once a run, each surface is fitted once. */
class OnceTest {
  private static final JavaClasses CLASSES =
      new ClassFileImporter()
          .withImportOption(new ImportOption.DoNotIncludeTests())
          .importPackages("fieldsalt");

  /** Samples that count how often each is looked at from the list. */
  private static final class Counted extends AbstractList<Sample> {
    private final List<Sample> samples;
    private final int[] looks;

    Counted(List<Sample> samples) {
      this.samples = samples;
      this.looks = new int[samples.size()];
    }

    @Override
    public Sample get(int index) {
      looks[index]++;
      return samples.get(index);
    }

    @Override
    public int size() {
      return samples.size();
    }
  }

  /** All that a run asks of the readings is answered without looking at the rows again. */
  @Test
  void everyQuestionIsAnsweredFromOneConversion() {
    JobDocument job = JobDocument.read(Path.of("sample-fields/ranch/job.yaml"), List.of());
    Counted samples = new Counted(RanchReader.read(job).samples());
    Basis basis = Basis.of(samples, BasisSettings.defaults());
    int[] once = samples.looks.clone();
    assertThat(once).hasSize(240).doesNotContain(0);
    assertThat(basis.converted().rows()).isNotEmpty();
    for (double depthCm : new double[] {15, 90, 120}) {
      assertThat(basis.rootZone(f -> new RootZone(depthCm, Uptake.UNIFORM)).readings().rows())
          .isNotEmpty();
    }
    for (SoilProperty property : SoilProperty.values()) {
      assertThat(basis.property(property, f -> new DepthRange(0, 15))).isNotNull();
    }
    assertThat(basis.sodium()).isNotNull();
    assertThat(samples.looks).containsExactly(once);
  }

  private static Set<String> callers(Class<?> of, String method) {
    return CLASSES.get(of).getMethods().stream()
        .filter(m -> m.getName().equals(method))
        .map(JavaMethod::getAccessesToSelf)
        .flatMap(Set::stream)
        .map(JavaAccess::getOriginOwner)
        .filter(owner -> !owner.isEquivalentTo(of))
        .map(owner -> owner.getSimpleName())
        .collect(Collectors.toCollection(TreeSet::new));
  }

  /** One place converts, one place a command asks for it. */
  @Test
  void nothingElseConverts() {
    assertThat(callers(LayerReadings.class, "of")).containsExactly("Basis");
    assertThat(callers(Basis.class, "of")).containsExactly("AssessRun", "ConvertRun", "Prepared");
  }

  /** The mapped surface is fitted by the run, those of soil properties by their keeper. */
  @Test
  void nothingElseFits() {
    assertThat(callers(SurfaceFitter.class, "fit")).containsExactly("MapRun", "SampledProperty");
    assertThat(callers(SampledProperty.class, "fit")).containsExactly("SoilSurfaces");
  }

  @Test
  void aSoilSurfaceIsFittedOnce() {
    JobDocument job = JobDocument.read(Path.of("sample-fields/ranch/job.yaml"), List.of());
    Prepared prepared = Prepared.of(job, (stage, share) -> {});
    SoilSurfaces soil = new SoilSurfaces(prepared, StageSettings.surface(job));
    for (SoilProperty property : List.of(SoilProperty.SAR, SoilProperty.CEC)) {
      assertThat(soil.of(property)).isPresent();
      assertThat(soil.of(property)).isSameAs(soil.of(property));
    }
  }
}
