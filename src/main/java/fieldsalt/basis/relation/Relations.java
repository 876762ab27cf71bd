package fieldsalt.basis.relation;

import fieldsalt.quantity.Method;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The catalogue of published relations, by the name that a job file uses. */
public final class Relations {
  private static final List<EceRelation> ALL = catalogue();

  private Relations() {}

  private static List<EceRelation> catalogue() {
    List<EceRelation> all =
        new ArrayList<>(
            List.of(
                new SaturatedPaste(),
                new SlavichPetterson1993(),
                new RaymentLyons2011(),
                new Talsma1968(),
                new LovedayEtAl1972(),
                new Murray1980(),
                new Shaw1981(),
                new LyonsEtAl2003(),
                new HoggHenry1984OneToOne(),
                new HoggHenry1984OneToTwo(),
                new Franzen2003(),
                new ZhangEtAl2005(),
                new SonmezEtAl2008OneToOne(),
                new SonmezEtAl2008NoIntercept(),
                new SonmezEtAl2008OneToTwoAndHalf(),
                new SonmezEtAl2008OneToFive(),
                new TanzaniaSchemes2023(),
                new IsdoryEtAl2021(),
                new PasteProbeInverse(),
                new RhoadesEtAl1989()));
    Arrays.stream(Method.values())
        .filter(m -> m != Method.PASTE)
        .map(MassBalance::new)
        .forEach(all::add);
    return List.copyOf(all);
  }

  /** Every published relation. */
  public static List<EceRelation> all() {
    return ALL;
  }

  /** Every published relation made for a method, whatever the kind of reading. */
  public static List<EceRelation> of(Method method) {
    return ALL.stream().filter(r -> serves(r, method)).toList();
  }

  public static boolean serves(EceRelation relation, Method method) {
    return Arrays.stream(fieldsalt.quantity.ReadingKind.values())
        .anyMatch(kind -> relation.takes(MethodKey.of(method, kind)));
  }

  /**
   * The relation of this name for a method, case-blind; a name may leave out the ratio at its end
   * ({@code HoggHenry1984} at 1:2 is {@code HoggHenry1984OneToTwo}). Empty if there is none.
   */
  public static Optional<EceRelation> named(String name, Method method) {
    String wanted = name.trim().toLowerCase(Locale.ROOT);
    return of(method).stream()
        .filter(r -> r.name().toLowerCase(Locale.ROOT).equals(wanted))
        .findFirst()
        .or(
            () ->
                of(method).stream()
                    .filter(r -> bare(r.name()).toLowerCase(Locale.ROOT).equals(wanted))
                    .findFirst());
  }

  private static String bare(String name) {
    return name.replaceAll("OneTo(One|TwoAndHalf|Two|Five)$", "");
  }

  /**
   * The user's own relation ECe = slope EC + intercept.
   *
   * @param slope dS/m per dS/m, greater than 0
   * @param interceptDsM dS/m, 0 for a factor
   * @param sdLn its error, standard deviation of ln ECe, greater than 0
   */
  public static EceRelation own(Method method, double slope, double interceptDsM, double sdLn) {
    return new OwnEquation(method, slope, interceptDsM, sdLn);
  }
}
