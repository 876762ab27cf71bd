package fieldsalt.plan.leaching;

import fieldsalt.plan.draw.Draws;
import fieldsalt.plan.draw.Futures;
import fieldsalt.plan.draw.Futures.Kind;
import fieldsalt.plan.draw.Odds;
import fieldsalt.plan.money.LeachingMoney;
import fieldsalt.plan.setting.PlanSettings;
import fieldsalt.plan.zone.SaltYears;
import fieldsalt.plan.zone.ZoneWork;
import fieldsalt.quantity.TextureGroup;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Salt of the root zone over the seasons: E(t) = E∞ + (E0 - E∞) exp(-f D t / W), with E∞ the steady
 * state of the water, D mm drained a season, W mm of water held in the root zone at field capacity
 * and f the leaching efficiency. A simplification of our own (one well-mixed store, no published
 * source): E0, f and W carry their doubt. Where water cannot leave, all salt stays: E rises by half
 * of the salt of the season's water over W.
 */
public final class SaltBalance {
  /** Water at field capacity, share of the volume, by texture (judgement, no source). */
  private static double held(TextureGroup texture) {
    return switch (texture) {
      case COARSE -> 0.15;
      case FINE -> 0.38;
      default -> 0.28;
    };
  }

  /** Share of the drained water that carries its salt with it (judgement, no source). */
  private static double efficiency(TextureGroup texture) {
    return switch (texture) {
      case COARSE -> 0.9;
      case FINE -> 0.5;
      default -> 0.7;
    };
  }

  /** Errors of both, of their logarithms (judgement). */
  private static final double EFFICIENCY_ERROR_LN = 0.3;

  private static final double HELD_ERROR_LN = 0.2;

  private final PlanSettings settings;
  private final Optional<SteadyState> steady;
  private final double[] efficiencyError;
  private final double[] heldError;

  public SaltBalance(PlanSettings settings, Futures futures) {
    this.settings = settings;
    this.steady = SteadyState.of(settings.water());
    this.efficiencyError = futures.shared(Kind.LEACHING_EFFICIENCY);
    this.heldError = futures.shared(Kind.WATER_HELD);
  }

  /**
   * The seasons of a zone; empty where the water or what passes the soil is not known.
   *
   * @param rootZoneCm depth of the root zone
   */
  public Optional<SaltYears> of(ZoneWork work, double rootZoneCm) {
    if (steady.isEmpty() || steady.get().drainedMm().isEmpty()) {
      return Optional.empty();
    }
    SteadyState s = steady.get();
    TextureGroup texture = work.soil().texture().group();
    double[] now = work.salt().draws();
    double[] left =
        new LeachingMoney(settings)
            .left(work.salt(), work.reclamation(), work.reclamation().plannedMm());
    double[] treated = new double[now.length];
    double[] rate = new double[now.length];
    double[] undrained = new double[now.length];
    int years = settings.money().years();
    double through = s.throughMm().getAsDouble();
    for (int d = 0; d < now.length; d++) {
      double f =
          Math.min(1, efficiency(texture) * Math.exp(EFFICIENCY_ERROR_LN * efficiencyError[d]));
      double w = held(texture) * rootZoneCm * 10 * Math.exp(HELD_ERROR_LN * heldError[d]);
      treated[d] = now[d] * left[d];
      rate[d] = f * s.drainedMm().getAsDouble() / w;
      undrained[d] = treated[d] + s.ecIn() * through * years / (2 * w);
    }
    List<Odds> planned = new ArrayList<>();
    List<Odds> untreated = new ArrayList<>();
    OptionalInt reached = OptionalInt.empty();
    double target = work.reclamation().targetEce();
    if (Draws.mean(treated) <= target) {
      reached = OptionalInt.of(0);
    }
    for (int t = 1; t <= years; t++) {
      planned.add(Odds.of(after(treated, s.ece(), rate, t)));
      untreated.add(Odds.of(after(now, s.ece(), rate, t)));
      if (reached.isEmpty() && planned.get(t - 1).mean() <= target) {
        reached = OptionalInt.of(t);
      }
    }
    return Optional.of(new SaltYears(planned, untreated, Odds.of(undrained), reached));
  }

  private static double[] after(double[] from, double steady, double[] rate, int seasons) {
    double[] out = new double[from.length];
    for (int d = 0; d < out.length; d++) {
      out[d] = steady + (from[d] - steady) * Math.exp(-rate[d] * seasons);
    }
    return out;
  }
}
