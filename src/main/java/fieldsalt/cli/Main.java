package fieldsalt.cli;

/** Entry point. */
public final class Main {
  private Main() {}

  /** Runs the command line. */
  public static void main(String[] args) {
    System.err.println("fieldsalt");
  }
}
