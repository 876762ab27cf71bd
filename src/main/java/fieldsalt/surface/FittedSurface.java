package fieldsalt.surface;

import fieldsalt.basis.site.Scale;
import fieldsalt.read.field.FieldBoundary;
import fieldsalt.surface.area.AreaMoments;
import fieldsalt.surface.area.JointMeans;
import fieldsalt.surface.area.TargetGroups;
import fieldsalt.surface.choice.MethodByField;
import fieldsalt.surface.choice.SurfaceSettings;
import fieldsalt.surface.choice.Tried;
import fieldsalt.surface.fit.Averaging;
import fieldsalt.surface.fit.Mixture;
import fieldsalt.surface.fit.Predictor;
import fieldsalt.surface.fit.SurfaceReport;
import fieldsalt.surface.map.JoinedMaps;
import fieldsalt.surface.map.KnownPoint;
import fieldsalt.surface.map.MadeStrips;
import fieldsalt.surface.map.MapGrids;
import fieldsalt.surface.map.MapMaker;
import fieldsalt.surface.map.PointDistribution;
import fieldsalt.surface.map.SurfaceMap;
import fieldsalt.surface.map.SurfaceStrips;
import fieldsalt.surface.next.NextSearch;
import fieldsalt.surface.next.Proposal;
import fieldsalt.surface.next.Proposals;
import fieldsalt.surface.site.FieldCells;
import fieldsalt.surface.site.Grid;
import fieldsalt.surface.site.Target;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleConsumer;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** A surface by the method of each field, averaged over its covariance models. */
final class FittedSurface implements Surface {
  /** Models that areas' moments are averaged over at most. */
  private static final int MODELS_FOR_AREAS = 16;

  /** Sites in doubt that head the list of what to measure next. */
  private static final int MOST_DOUBTFUL = 3;

  private final MethodByField methods;
  private final Scale scale;
  private final List<FieldBoundary> fields;
  private final Map<String, FieldBoundary> byName;
  private final SurfaceSettings settings;
  private final SurfaceReport report;

  FittedSurface(
      MethodByField methods,
      Scale scale,
      List<FieldBoundary> fields,
      SurfaceSettings settings,
      SurfaceReport report) {
    this.methods = methods;
    this.scale = scale;
    this.fields = fields;
    this.byName =
        fields.stream().collect(Collectors.toMap(FieldBoundary::name, Function.identity()));
    this.settings = settings;
    this.report = report;
  }

  @Override
  public SurfaceMap map(String field, double limit, DoubleConsumer progress) {
    FieldBoundary boundary = byName.get(field);
    double cell = cellM() * MapGrids.stepOf(boundary, cellM());
    return new MapMaker(methods, scale)
        .map(
            FieldCells.gridOver(List.of(boundary), cell),
            List.of(boundary),
            Map.of(field, limit),
            progress);
  }

  @Override
  public int heldStep() {
    return MapGrids.heldStep(fields, cellM());
  }

  @Override
  public List<SurfaceStrips> rasters(
      List<SurfaceMap> maps, Map<String, Double> limitByField, DoubleConsumer progress) {
    List<List<FieldBoundary>> groups = MapGrids.groups(fields, cellM());
    boolean held = maps.stream().allMatch(m -> m.grid().cellM() == cellM());
    MapMaker maker = new MapMaker(methods, scale);
    List<SurfaceStrips> rasters = new ArrayList<>();
    for (List<FieldBoundary> group : groups) {
      int before = rasters.size();
      Grid grid = FieldCells.gridOver(group, cellM());
      DoubleConsumer ofAll = share -> progress.accept((before + share) / groups.size());
      rasters.add(
          held
              ? new JoinedMaps(grid, group.stream().map(FieldBoundary::name).toList(), maps)
              : new MadeStrips(maker, grid, group, limitByField, ofAll));
    }
    return rasters;
  }

  @Override
  public double cellM() {
    if (settings.cellM().isPresent()) {
      return settings.cellM().getAsDouble();
    }
    double hectares = fields.stream().mapToDouble(f -> f.shapeM().getArea()).sum() / 1e4;
    double automatic = hectares <= 100 ? 5 : hectares <= 1000 ? 10 : 20;
    return Math.min(automatic, settings.maxCellM());
  }

  @Override
  public Marginals marginals(List<Target> targets) {
    List<Mixture> mixtures = mixtures(targets);
    return new Marginals(
        mixtures.stream().mapToDouble(Mixture::expectation).toArray(),
        mixtures.stream().mapToDouble(m -> Math.sqrt(Math.max(0, m.variance()))).toArray());
  }

  @Override
  public JointMeans areaMeans(List<List<Target>> areas) {
    int group = methods.groupOf(areas.get(0).get(0).field());
    Tried method = methods.groups().get(group).method();
    List<Predictor> predictors = method.predictors();
    double[] all = predictors.stream().mapToDouble(p -> p.solved().weight()).toArray();
    double[] kept = Averaging.thinned(all, MODELS_FOR_AREAS);
    List<Integer> used = new ArrayList<>();
    for (int k = 0; k < kept.length; k++) {
      if (kept[k] > 0) {
        used.add(k);
      }
    }
    AreaMoments moments = new AreaMoments(scale);
    List<AreaMoments.Moments> models =
        used.parallelStream()
            .map(k -> moments.under(predictors.get(k), method.data(), areas))
            .toList();
    JointMeans joint = moments.together(models, used.stream().mapToDouble(k -> kept[k]).toArray());
    return joint.after(sharedBefore(group));
  }

  /** Effects that the areas of the groups before one share. */
  private int sharedBefore(int group) {
    return methods.groups().subList(0, group).stream()
        .mapToInt(g -> MODELS_FOR_AREAS * (g.method().data().shared() + 1))
        .sum();
  }

  @Override
  public PointDistribution at(Target target) {
    return at(List.of(target)).get(0);
  }

  /** What is known at each of many places, for less than one by one. */
  List<PointDistribution> at(List<Target> targets) {
    return mixtures(targets).stream()
        .<PointDistribution>map(mixture -> new KnownPoint(mixture, scale))
        .toList();
  }

  private List<Mixture> mixtures(List<Target> targets) {
    Mixture[] known = new Mixture[targets.size()];
    Map<Integer, List<Integer>> byGroup =
        IntStream.range(0, known.length)
            .boxed()
            .collect(Collectors.groupingBy(i -> methods.groupOf(targets.get(i).field())));
    byGroup.forEach(
        (group, members) -> {
          Tried method = methods.groups().get(group).method();
          TargetGroups groups =
              TargetGroups.of(method.data(), members.stream().map(targets::get).toList());
          for (int g = 0; g < groups.points().size(); g++) {
            Mixture[] own = MapMaker.mixtures(method, groups.points().get(g));
            for (int i = 0; i < own.length; i++) {
              known[members.get(groups.positions().get(g)[i])] = own[i];
            }
          }
        });
    return List.of(known);
  }

  @Override
  public PointDistribution reading(Target target, double[] loadings, double ownVariance) {
    Tried method = methods.of(target.field());
    TargetGroups groups = TargetGroups.of(method.data(), List.of(target));
    double[] unit = method.data().standardised(loadings);
    List<Predictor> predictors = method.predictors();
    double[] weight = predictors.stream().mapToDouble(p -> p.solved().weight()).toArray();
    double[] mean = new double[weight.length];
    double[] sd = new double[weight.length];
    for (int k = 0; k < weight.length; k++) {
      Predictor.Predicted seen = predictors.get(k).readings(groups.points().get(0), unit);
      mean[k] = seen.mean()[0];
      sd[k] = Math.sqrt(Math.max(0, seen.variance()[0]) + ownVariance);
    }
    return new KnownPoint(new Mixture(weight, mean, sd), scale);
  }

  @Override
  public Proposals measureNext(List<List<Target>> zones, List<Double> hectares, int count) {
    Proposals found = found(zones, hectares, count);
    List<Proposal> all = new ArrayList<>();
    report.details().doubtful().stream()
        .filter(d -> !d.supported())
        .limit(MOST_DOUBTFUL)
        .forEach(
            d ->
                all.add(
                    new Proposal(
                        Proposal.Kind.DOUBTFUL_AGAIN,
                        d.siteId(),
                        d.field(),
                        d.place(),
                        0,
                        Double.NaN,
                        found.ranchErrorNow(),
                        found.worstZoneErrorNow())));
    all.addAll(found.best());
    List<Proposal> first = all.subList(0, Math.min(count, all.size()));
    return new Proposals(found.ranchErrorNow(), found.worstZoneErrorNow(), first, found.alike());
  }

  /** Of each group of fields, in one order of gain. */
  private Proposals found(List<List<Target>> zones, List<Double> hectares, int count) {
    List<Proposals> each = new ArrayList<>();
    List<Double> area = new ArrayList<>();
    for (MethodByField.Group group : methods.groups()) {
      List<FieldBoundary> own =
          fields.stream().filter(f -> group.fields().contains(f.name())).toList();
      List<Integer> mine =
          IntStream.range(0, zones.size())
              .filter(z -> group.fields().contains(zones.get(z).get(0).field()))
              .boxed()
              .toList();
      each.add(
          new NextSearch(group.method().likeliest(), NextSearch.PLACES)
              .best(
                  own,
                  mine.stream().map(zones::get).toList(),
                  mine.stream().map(hectares::get).toList(),
                  count));
      area.add(own.stream().mapToDouble(f -> f.shapeM().getArea()).sum());
    }
    return Proposals.merged(each, area, count);
  }

  @Override
  public List<String> mappedFields() {
    return fields.stream().map(FieldBoundary::name).toList();
  }

  @Override
  public SurfaceReport report() {
    return report;
  }
}
