package fieldsalt.cli;

import java.util.LinkedHashMap;
import java.util.Map;
import picocli.CommandLine;

/** Makes commands, handing each the console it speaks through. */
final class Commands implements CommandLine.IFactory {
  private static final Map<String, Class<? extends FieldsaltCommand.Sub>> BY_NAME = byName();

  private final Console console;

  private Commands(Console console) {
    this.console = console;
  }

  private static Map<String, Class<? extends FieldsaltCommand.Sub>> byName() {
    Map<String, Class<? extends FieldsaltCommand.Sub>> all = new LinkedHashMap<>();
    all.put("map", MapCommand.class);
    all.put("check", CheckCommand.class);
    all.put("convert", ConvertCommand.class);
    all.put("assess", AssessCommand.class);
    all.put("crops", CropsCommand.class);
    all.put("job", JobCommand.class);
    return all;
  }

  /**
   * The command line that these arguments need. Reading the options of a command takes time: if the
   * first argument names one, only that one is made ready.
   */
  static CommandLine line(String[] args, Console console) {
    CommandLine line = new CommandLine(new FieldsaltCommand(), new Commands(console));
    String first = args.length == 0 ? "" : args[0];
    if (BY_NAME.containsKey(first)) {
      line.addSubcommand(first, BY_NAME.get(first));
    } else {
      BY_NAME.forEach(line::addSubcommand);
      line.addSubcommand(CommandLine.HelpCommand.class);
    }
    return line;
  }

  @Override
  public <K> K create(Class<K> type) throws Exception {
    if (FieldsaltCommand.Sub.class.isAssignableFrom(type)) {
      return type.getDeclaredConstructor(Console.class).newInstance(console);
    }
    return CommandLine.defaultFactory().create(type);
  }
}
