package fieldsalt.geo.registry;

import fieldsalt.finding.InputProblem;
import fieldsalt.geo.datum.WaysToWgs84;
import fieldsalt.geo.projection.GridWay;
import fieldsalt.geo.projection.Krovak;
import fieldsalt.geo.projection.TiedGrid;
import fieldsalt.geo.text.WktNode;
import java.text.ParseException;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Function;
import org.geotools.api.referencing.ReferenceIdentifier;
import org.geotools.api.referencing.crs.CompoundCRS;
import org.geotools.api.referencing.crs.CoordinateReferenceSystem;
import org.geotools.api.referencing.crs.ProjectedCRS;
import org.geotools.api.referencing.crs.SingleCRS;
import org.geotools.api.referencing.datum.GeodeticDatum;
import org.geotools.api.referencing.operation.NoninvertibleTransformException;
import org.geotools.referencing.CRS;
import org.geotools.referencing.wkt.Parser;

/** Systems that the coordinate library knows, by code or text, with what ties them to WGS 84. */
public final class LibrarySystems {
  private static final Set<String> WRONG_METHODS =
      Set.of(
          "Behrmann",
          "Equal Earth",
          "Cylindrical_Equal_Area",
          "Lambert Cylindrical Equal Area (Spherical)",
          "World_Van_der_Grinten_I",
          "Gnomonic",
          "Robinson");

  /** Its series are good near the meridian only. */
  private static final Set<String> CASSINI_OF_THE_WORLD = Set.of("World_Cassini", "Sphere_Cassini");

  private LibrarySystems() {}

  /** Says where the registry's database goes; before anything else of the library is asked. */
  public static void prepare() {
    Registry.prepare();
  }

  /** The code of the map of a system with heights; none if the code is of a map alone. */
  public static OptionalInt mapOf(int code) {
    if (Registry.decode(code) instanceof CompoundCRS compound) {
      for (ReferenceIdentifier id : CRS.getHorizontalCRS(compound).getIdentifiers()) {
        return OptionalInt.of(Integer.parseInt(id.getCode()));
      }
    }
    return OptionalInt.empty();
  }

  /**
   * The registry's system with a code.
   *
   * @throws InputProblem if there is none, or it cannot be computed or tied to WGS 84
   */
  public static TiedGrid ofCode(int code) {
    return of(Registry.decode(code));
  }

  /**
   * A system that has been read already.
   *
   * @throws InputProblem if it cannot be computed or tied to WGS 84
   */
  public static TiedGrid of(CoordinateReferenceSystem any) {
    return of(any, DatumTies::of);
  }

  /**
   * The system of a text.
   *
   * @param node version 1, its quirks mended
   * @throws InputProblem if it cannot be computed or tied to WGS 84
   */
  public static TiedGrid ofText(WktNode node) {
    try {
      Optional<Krovak> krovak = Krovak.ofText(node);
      return krovak.isPresent() ? of(krovak.get(), node) : of(parsed(node), DatumTies::ofText);
    } catch (InputProblem e) {
      throw e;
    } catch (ParseException | RuntimeException | LinkageError e) {
      throw notComputed(
          node.name(), node.child("PROJECTION").map(WktNode::name).orElse(node.keyword()), e);
    }
  }

  private static CoordinateReferenceSystem parsed(WktNode node) throws ParseException {
    Silence.begin();
    return (CoordinateReferenceSystem) new Parser().parseObject(node.toString());
  }

  private static TiedGrid of(Krovak krovak, WktNode projected) throws ParseException {
    double metres = projected.child("UNIT").orElseThrow().number(1);
    SingleCRS base = (SingleCRS) parsed(projected.child("GEOGCS").orElseThrow());
    double meridian = DatumDegrees.meridian(base);
    GridWay way =
        GridWay.back(
            (x, y) -> {
              double[] degrees = krovak.degrees(x * metres, y * metres);
              return new double[] {degrees[0] + meridian, degrees[1]};
            });
    return new TiedGrid(projected.name(), way, DatumTies.ofText(base));
  }

  private static TiedGrid of(CoordinateReferenceSystem any, Function<SingleCRS, WaysToWgs84> ties) {
    String name = any.getName().getCode();
    SingleCRS single = CRS.getHorizontalCRS(any);
    if (single == null || !(single.getDatum() instanceof GeodeticDatum)) {
      throw notComputed(name, "a system tied to no place", null);
    }
    String method = method(single);
    if (WRONG_METHODS.contains(method)
        || CASSINI_OF_THE_WORLD.contains(single.getName().getCode())) {
      throw notComputed(name, method, null);
    }
    try {
      String own = single.getName().getCode();
      return new TiedGrid(own, DatumDegrees.of(single), ties.apply(single));
    } catch (NoninvertibleTransformException e) {
      throw notComputed(name, method, e);
    }
  }

  /**
   * The projection's name. Some the library, as of 33.1, places metres to kilometres from where
   * PROJ 9.1.1 does.
   */
  private static String method(SingleCRS crs) {
    return crs instanceof ProjectedCRS projected
        ? projected.getConversionFromBase().getMethod().getName().getCode()
        : "";
  }

  private static InputProblem notComputed(String system, String projection, Throwable why) {
    InputProblem problem =
        new InputProblem(
            "coordinate system " + system,
            "the projection " + projection,
            "a projection that this program computes",
            "Save the file in WGS 84 (EPSG:4326) or in the UTM zone of the ranch with a GIS"
                + " program.");
    problem.initCause(why);
    return problem;
  }
}
