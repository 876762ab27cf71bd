package fieldsalt.cli;

import picocli.CommandLine;

/** Makes commands, handing each the console it speaks through. */
final class Commands implements CommandLine.IFactory {
  private final Console console;

  Commands(Console console) {
    this.console = console;
  }

  @Override
  public <K> K create(Class<K> type) throws Exception {
    if (FieldsaltCommand.Sub.class.isAssignableFrom(type)) {
      return type.getDeclaredConstructor(Console.class).newInstance(console);
    }
    return CommandLine.defaultFactory().create(type);
  }
}
