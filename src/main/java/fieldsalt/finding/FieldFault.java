package fieldsalt.finding;

/** A fault of ours while one field was worked on; the other fields can be written without it. */
public final class FieldFault extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final String field;

  /**
   * @param cause not an {@link InputProblem}, which is the user's to mend
   */
  public FieldFault(String field, RuntimeException cause) {
    super("field " + field + ": " + cause, cause);
    this.field = field;
  }

  /** Runs what is done for one field, and names the field in whatever goes wrong. */
  public static <T> T naming(String field, java.util.function.Supplier<T> work) {
    try {
      return work.get();
    } catch (InputProblem | FieldFault e) {
      throw e;
    } catch (RuntimeException e) {
      throw new FieldFault(field, e);
    }
  }

  public String field() {
    return field;
  }
}
