#include "command_line_log.hpp"

#include <chrono>
#include <memory>

#include "base/harmless.hpp"
#include "command_line_files.hpp"
#include "disk_log.hpp"
#include "disk_store.hpp"
#include "log/log_commands.hpp"
#include "log/log_remarks.hpp"
#include "records/file_remarks.hpp"
#include "records/new_id.hpp"
#include "time_now.hpp"

namespace camside {

namespace {

using namespace records;

struct LogArguments {
  std::string folder = default_data_folder();
  LogListing listing;
  Change change;
  std::string by;
  std::string measurements_file;
  std::string old_undo;
  std::vector<std::string> fields;
  std::vector<std::string> files;
  bool preview = false;
  ExportOptions exporting;
};

// The log of a folder, open for one command.
struct OpenFolder {
  OpenFolder(const std::string& folder, std::chrono::milliseconds patience) : files(folder, patience), engine(files) {}
  DiskFiles files;
  storage::LogEngine engine;
  storage::OpenedStore store;
};

Said refused(const Findings& findings) {
  return {"", print_findings(findings), exit_bad_input};
}

constexpr auto no_patience = std::chrono::milliseconds(0);
constexpr auto writers_patience = std::chrono::seconds(2);

template <class Then>
Said with_log(const std::string& folder, std::chrono::milliseconds patience, Then then) {
  if (folder.empty())
    return refused({remarks::cannot_open("The default folder", "neither HOME nor XDG_DATA_HOME is set")});
  OpenFolder open(folder, patience);
  auto opened = open.engine.open();
  if (!opened) return refused({opened.error()});
  open.store = std::move(*opened);
  Said said = then(open);
  said.err = print_findings(open.store.findings) + said.err;
  return said;
}

Stamp stamp_now(const std::string& by) {
  return {new_id(), time_now(), by};
}

bool changes(const Change& c, const LogArguments& args) {
  return !c.new_bike.empty() || !c.kind.empty() || !c.replaces.empty() || !c.remove.empty() || !c.undo.empty() ||
         !args.measurements_file.empty();
}

Said save(OpenFolder& open, const std::vector<Entry>& entries, std::string said) {
  if (entries.empty()) return {std::move(said), "", exit_good};
  const auto saved = open.engine.append(entries);
  remarks::take_back_not_saved(open.store.findings);  // it is, or that it isn't is said now
  if (!saved) return refused({saved.error()});
  return {std::move(said), "", exit_good};
}

Said change_log(OpenFolder& open, const LogArguments& args) {
  const auto entries = entries_of(open.store.log, args.change, [&args] { return stamp_now(args.by); });
  if (!entries) return refused(entries.error());
  std::string ids;
  for (const Entry& entry : *entries)
    ids += args.change.new_bike.empty() ? "Saved " + entry.id() + "\n" : "Saved bike " + entry.bike() + "\n";
  return save(open, *entries, ids);
}

Said renamed(std::string_view old_word, std::string_view new_word) {
  return {"", "“" + std::string(old_word) + "” is called “" + std::string(new_word) + "” now; nothing was done\n",
          exit_bad_input};
}

Said run_log(LogArguments args) {
  if (!args.old_undo.empty()) return renamed("--undo", "--take-back");
  args.change.bike = args.listing.bike;
  for (const std::string& field : args.fields) {
    const std::size_t equals = std::min(field.find('='), field.size());
    args.change.fields.emplace_back(field.substr(0, equals), field.substr(std::min(equals + 1, field.size())));
  }
  if (!args.measurements_file.empty()) {
    auto bytes = read_for_command_line(args.measurements_file);
    if (!bytes) return refused({bytes.error()});
    args.change.measurements = std::move(*bytes);
  }
  const bool writes = changes(args.change, args);
  return with_log(args.folder, writes ? writers_patience : no_patience, [&](OpenFolder& open) {
    return writes ? change_log(open, args) : print_log(open.store.log, args.listing);
  });
}

Said merge_file(OpenFolder& open, const std::string& name, bool preview) {
  const auto bytes = read_for_command_line(name);
  if (!bytes) return refused({bytes.error()});
  Findings findings;
  const auto theirs = log_to_merge(*bytes, findings);
  if (!theirs) return refused(theirs.error());
  const std::string counts = harmless(name) + ": " + words_of(preview_merge(open.store.log, *theirs)) + "\n";
  Said said{counts, "", exit_good};
  if (!preview) {
    const std::vector<Entry> fresh = to_take_over(open.store.log, *theirs);
    said = save(open, fresh, counts);
    if (said.exit == exit_good)
      for (const Entry& entry : fresh) open.store.log.add(entry);  // for the next file
  }
  said.err = print_findings(findings) + said.err;
  return said;
}

Said run_merge(const LogArguments& args) {
  return with_log(args.folder, args.preview ? no_patience : writers_patience, [&](OpenFolder& open) {
    Said all;
    for (const std::string& name : args.files) {
      const Said one = merge_file(open, name, args.preview);
      all.out += one.out;
      all.err += one.err;
      all.exit = std::max(all.exit, one.exit);
    }
    return all;
  });
}

using Shared = std::shared_ptr<LogArguments>;

CLI::App* subcommand(CLI::App& app, const char* name, const char* help, const Shared& args) {
  CLI::App* command = app.add_subcommand(name, help);
  command->add_option("--folder", args->folder, "Folder of the log; none: where the app keeps it");
  return command;
}

void add_log(CLI::App& app, const Shared& args, Said& said) {
  CLI::App* command = subcommand(app, "log", "List the bikes or the log of one; add, correct, delete, take back", args);
  command->add_option("--bike", args->listing.bike, "A bike by its nickname or id");
  command->add_flag("--all", args->listing.everything, "What was replaced and deleted too");
  command->add_option("--new-bike", args->change.new_bike, "Begin a bike of this nickname");
  command->add_option("--add", args->change.kind, "Add an entry: facts, odometer, clock, service, finding, note");
  command->add_option("--measurements", args->measurements_file, "Add every measurement of a measurement file");
  command->add_option("--correct", args->change.replaces, "Correct the entry of this id with --set");
  command->add_option("--delete", args->change.remove, "Delete the entry of this id");
  command->add_option("--take-back", args->change.undo,
                      "Take back the entry of this id: what was before it holds again");
  command->add_option("--undo", args->old_undo)->group("");
  command->add_option("--set", args->fields, "A field, as name=text: \"reading=41,300 mi\"");
  command->add_option("--day", args->change.day, "The day it is about: 2024-05-14");
  command->add_option("--by", args->by, "Who makes the entry");
  command->add_option("--note", args->change.note, "Anything worth keeping with it");
  command->callback([args, &said] { said = run_log(*args); });
}

void add_merge(CLI::App& app, const Shared& args, Said& said) {
  CLI::App* command = subcommand(app, "take-in", "Take the exported logs of other devices into this one", args);
  command->add_option("FILE", args->files, "Exported logs, or - for standard input")->required();
  command->add_flag("--preview", args->preview, "Only say what it would do");
  command->callback([args, &said] { said = run_merge(*args); });
}

// What this was called before answers with the new word.
void add_old_merge(CLI::App& app, Said& said) {
  CLI::App* command = app.add_subcommand("merge")->group("");
  command->allow_extras();
  command->callback([&said] { said = renamed("merge", "take-in"); });
}

void add_export(CLI::App& app, const Shared& args, Said& said) {
  CLI::App* command =
      subcommand(app, "export", "Print the log of all bikes or of one, to keep or to take in elsewhere", args);
  command->add_option("--bike", args->exporting.bike, "A bike by its nickname or id; none: all");
  command->add_flag("--csv", args->exporting.csv, "As a table for a spreadsheet; needs --bike");
  command->add_flag("--all", args->exporting.table.everything, "In the table: what was replaced and deleted too");
  command->add_option("--units", args->exporting.table.system, "Units of the table: inch (default) or metric")
      ->transform(
          CLI::CheckedTransformer(std::map<std::string, System>{{"inch", System::Inch}, {"metric", System::Metric}}));
  command->callback([args, &said] {
    said = with_log(args->folder, no_patience,
                    [&](OpenFolder& open) { return print_export(open.store.log, args->exporting); });
  });
}

}  // namespace

Said with_log_of(const std::string& folder, const std::function<Said(const Log&)>& then) {
  return with_log(folder, no_patience, [&](OpenFolder& open) { return then(open.store.log); });
}

void add_log_commands(CLI::App& app, Said& said) {
  const auto args = std::make_shared<LogArguments>();
  add_log(app, args, said);
  add_merge(app, args, said);
  add_old_merge(app, said);
  add_export(app, args, said);
}

}  // namespace camside
