package fieldsalt.finding;

import java.util.List;
import java.util.stream.Collectors;

/** The input cannot be used and a person can mend it: everything wrong, told at once. */
public final class InputProblem extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final transient List<Problem> problems;

  /**
   * One thing that is wrong.
   *
   * @param where file, row or feature, column or key
   * @param found what stands there
   * @param expected what should stand there
   * @param remedy what to do
   */
  public record Problem(String where, String found, String expected, String remedy) {
    @Override
    public String toString() {
      return where + ": found " + found + "; expected " + expected + ". " + remedy;
    }
  }

  public InputProblem(List<Problem> problems) {
    super(problems.stream().map(Problem::toString).collect(Collectors.joining("\n")));
    this.problems = List.copyOf(problems);
  }

  public InputProblem(String where, String found, String expected, String remedy) {
    this(List.of(new Problem(where, found, expected, remedy)));
  }

  public List<Problem> problems() {
    return problems;
  }

  /** The same problems, each as one within a file or feature. */
  public InputProblem within(String place) {
    return new InputProblem(
        problems.stream()
            .map(p -> new Problem(place + ", " + p.where(), p.found(), p.expected(), p.remedy()))
            .toList());
  }

  /** This problem, with what brought it to light kept for {@code --debug}. */
  public InputProblem because(Throwable cause) {
    initCause(cause);
    return this;
  }
}
