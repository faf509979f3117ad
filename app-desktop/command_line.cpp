// camside: the command line. Reads arguments and files; what is done with them stands in core/records/commands.
#include <CLI/CLI.hpp>
#include <sstream>
#include <string>

#include "command_line_due.hpp"
#include "command_line_files.hpp"
#include "command_line_log.hpp"
#include "knowledge/knowledge.hpp"
#include "log/log_schema.hpp"
#include "records/commands.hpp"

namespace {

using camside::System;
using namespace camside::records;

struct Arguments {
  std::string file;
  std::string kind;
  SolveOptions solve;
  std::string csv;
  std::string around_file;
  CsvOptions table;
  std::vector<std::string> fields;
};

Said bad_input(const camside::Finding& finding) {
  return {"", print_findings({finding}), exit_bad_input};
}

Said print_any_schema(const std::string& name) {
  if (name == "knowledge") return {camside::knowledge::schema_of_knowledge(), "", exit_good};
  if (name == "log") return {schema_of_log(), "", exit_good};
  return print_schema(name);
}

// Reads a file and goes on with its bytes.
template <class Then>
Said with_file(const std::string& name, Then then) {
  const auto bytes = camside::read_for_command_line(name);
  return bytes ? then(*bytes) : bad_input(bytes.error());
}

// "limit.value=0.003 in" to path and text.
std::vector<std::pair<std::string, std::string>> paths_and_texts(const std::vector<std::string>& fields) {
  std::vector<std::pair<std::string, std::string>> out;
  for (const std::string& field : fields) {
    const std::size_t equals = std::min(field.find('='), field.size());
    out.emplace_back(field.substr(0, equals), field.substr(std::min(equals + 1, field.size())));
  }
  return out;
}

Said import_table(Arguments args) {
  args.table.kind = args.kind;
  args.table.fields = paths_and_texts(args.fields);
  if (args.around_file.empty())
    return with_file(args.csv, [&](const std::string& csv) { return import_csv(csv, args.table); });
  return with_file(args.around_file, [&](const std::string& around) {
    args.table.around = around;
    return with_file(args.csv, [&](const std::string& csv) { return import_csv(csv, args.table); });
  });
}

Said solve(const Arguments& args) {
  if (args.csv.empty())
    return with_file(args.file, [&](const std::string& bytes) { return solve_bytes(bytes, args.solve); });
  const Said imported = import_table(args);
  return imported.exit == exit_good ? solve_bytes(imported.out, args.solve) : imported;
}

void add_table_options(CLI::App& command, Arguments& args) {
  command.add_option("--kind", args.kind, "Kind of measurement a table is taken into: runout, backlash");
  command.add_option("--with", args.around_file, "Measurement file that gives the set-up and the limit around a table");
  command.add_option("--columns", args.table.columns,
                     "Columns of a table without a header: \"angle (deg), reading (in)\"");
  command.add_option("--set", args.fields, "A further field beside a table, as path=text: \"limit.value=0.003 in\"");
}

void add_solve(CLI::App& app, Arguments& args, Said& said) {
  CLI::App* command = app.add_subcommand("solve", "Solve every measurement of a file and print the results");
  CLI::Option* file = command->add_option("FILE", args.file, "Measurement file, or - for standard input");
  CLI::Option* csv = command->add_option("--csv", args.csv, "Table of readings (CSV) in place of a measurement file");
  csv->excludes(file);
  add_table_options(*command, args);
  command->add_flag("--json", args.solve.json, "For programs: every value with unit and uncertainty");
  command->add_flag("--strict", args.solve.strict, "Exit with 1 when a verdict is Outside or Not proven");
  command->add_flag("--working", args.solve.printing.working, "Print the steps too");
  command->add_option("--units", args.solve.printing.system, "Units to print in: inch (default) or metric")
      ->transform(
          CLI::CheckedTransformer(std::map<std::string, System>{{"inch", System::Inch}, {"metric", System::Metric}}));
  command->callback([&args, &said, file, csv] {
    if (file->empty() && csv->empty()) throw CLI::RequiredError("FILE");
    said = solve(args);
  });
}

void add_import(CLI::App& app, Arguments& args, Said& said) {
  CLI::App* command = app.add_subcommand("import", "Make a measurement file of a table of readings (CSV)");
  command->add_option("CSV", args.csv, "The table, or - for standard input")->required();
  add_table_options(*command, args);
  command->callback([&args, &said] { said = import_table(args); });
}

void add_check(CLI::App& app, Arguments& args, Said& said) {
  CLI::App* command = app.add_subcommand("check", "Print every finding of a file with the path of the field");
  command->add_option("FILE", args.file, "Measurement file, or - for standard input")->required();
  command->callback(
      [&args, &said] { said = with_file(args.file, [](const std::string& bytes) { return check_bytes(bytes); }); });
}

void add_words(CLI::App& app, Arguments& args, Said& said) {
  app.add_subcommand("kinds", "List the kinds of measurement")->callback([&said] { said = list_kinds(); });
  CLI::App* schema = app.add_subcommand("schema", "Print the JSON Schema of a kind, of all, of a log, or of knowledge");
  schema->add_option("KIND", args.kind, "Kind of measurement, log or knowledge; none: of all kinds");
  schema->callback([&args, &said] { said = print_any_schema(args.kind); });
  CLI::App* example = app.add_subcommand("example", "Print an example file of a kind");
  example->add_option("KIND", args.kind, "Kind of measurement")->required();
  example->callback([&args, &said] { said = print_example(args.kind); });
}

// Help, or what is wrong with the arguments.
Said said_by(const CLI::App& app, const CLI::ParseError& error) {
  std::ostringstream out;
  std::ostringstream err;
  const int status = app.exit(error, out, err);
  return {out.str(), err.str(), status == 0 ? exit_good : exit_bad_input};
}

}  // namespace

int main(int argc, char** argv) {
  camside::say_when_memory_runs_out();
  CLI::App app("Measuring and judging the cam side of an air-cooled pushrod V-twin");
  app.require_subcommand(1);
  app.footer(
      "Exit: 0 good; 1 with --strict when a verdict is Outside or Not proven; 2 bad input, or not all could be "
      "written");
  Arguments args;
  Said said;
  add_solve(app, args, said);
  add_check(app, args, said);
  add_import(app, args, said);
  add_words(app, args, said);
  camside::add_log_commands(app, said);
  camside::add_due_command(app, said);
  try {
    app.parse(argc, argv);
  } catch (const CLI::ParseError& error) {
    said = said_by(app, error);
  }
  return camside::say_on_command_line(said);
}
