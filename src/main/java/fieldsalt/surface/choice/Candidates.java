package fieldsalt.surface.choice;

import fieldsalt.surface.fit.LeaveOneOut;
import fieldsalt.surface.fit.LeftOut;
import fieldsalt.surface.fit.Linear;
import fieldsalt.surface.fit.MeanRule;
import fieldsalt.surface.fit.Modelled;
import fieldsalt.surface.fit.Predictor;
import fieldsalt.surface.fit.Solved;
import fieldsalt.surface.fit.SurfaceMethod;
import fieldsalt.surface.kernel.Kriging;
import fieldsalt.surface.site.IdwRule;
import fieldsalt.surface.site.LinearRule;
import fieldsalt.surface.site.Observations;
import java.util.ArrayList;
import java.util.List;

/** The methods tried on the same sites: mean, kriging, drift (if there is one), IDW. */
public final class Candidates {
  private Candidates() {}

  /** Mean, kriging and IDW under one set of covariance models. */
  public static List<Tried> withoutDrift(Modelled modelled) {
    Observations data = modelled.likelihood().data();
    List<Solved> nodes = modelled.nodes();
    LeaveOneOut leave = new LeaveOneOut(data, nodes);
    MeanRule mean = new MeanRule(modelled.uncorrelated());
    IdwRule idw = new IdwRule(data);
    List<Tried> tried = new ArrayList<>();
    tried.add(
        new Tried(
            SurfaceMethod.MEAN, data, linear(nodes, mean), leave.mean(modelled.uncorrelated())));
    tried.add(new Tried(SurfaceMethod.KRIGING, data, kriging(nodes), leave.kriging()));
    tried.add(new Tried(SurfaceMethod.IDW, data, linear(nodes, idw), leave.idw()));
    return tried;
  }

  /** Kriging of fields apart from others, whose readings tell of the shared offsets. */
  public static Tried krigingApart(Modelled modelled) {
    return withDrift(modelled).as(SurfaceMethod.KRIGING);
  }

  /** Kriging with the drifts of the data. */
  static Tried withDrift(Modelled modelled) {
    Observations data = modelled.likelihood().data();
    List<LeftOut> left = new LeaveOneOut(data, modelled.nodes()).kriging();
    return new Tried(SurfaceMethod.DRIFT, data, kriging(modelled.nodes()), left);
  }

  private static List<Predictor> linear(List<Solved> nodes, LinearRule rule) {
    return nodes.stream().<Predictor>map(n -> new Linear(n, rule)).toList();
  }

  private static List<Predictor> kriging(List<Solved> nodes) {
    return nodes.stream().<Predictor>map(Kriging::new).toList();
  }
}
