#include "command_line_due.hpp"

#include <memory>

#include "base/harmless.hpp"
#include "command_line_files.hpp"
#include "command_line_log.hpp"
#include "disk_store.hpp"
#include "due/due_words.hpp"
#include "log/log_commands.hpp"
#include "records/file_remarks.hpp"
#include "time_now.hpp"
#include "units/parse.hpp"

namespace camside {

namespace {

using namespace records;

struct DueArguments {
  std::string folder = default_data_folder();
  std::string file;
  std::string bike;
  std::string now;
  std::string calendar;
  System system = System::Inch;
};

Said refused(const Findings& findings) {
  return {"", print_findings(findings), exit_bad_input};
}

Said save_calendar(const DueArguments& args, const std::vector<exchange::CalendarEvent>& events, Said said) {
  const std::string bytes = exchange::calendar_of(events, args.now);
  if (args.calendar == "-") return {bytes, said.err, exit_good};
  if (const auto failed = write_for_command_line(args.calendar, bytes)) return refused({*failed});
  said.out += "Saved " + harmless(args.calendar) + "\n";
  return said;
}

Said due_of(const Log& log, const DueArguments& args, Date today) {
  const View all = view(log);
  std::string only;
  if (!args.bike.empty()) {
    const auto meant = bike_meant(log, args.bike);
    if (!meant) return refused({meant.error()});
    only = *meant;
  }
  Said said{"", "", exit_good};
  std::vector<exchange::CalendarEvent> events;
  for (const Bike& bike : all.bikes) {
    if (only.empty() ? bike.removed || bike.id.empty() : bike.id != only) continue;
    const due_board::History history = due_board::history_of(log, bike, knowledge::usual_knowledge(), today);
    const due_board::Board board = due_board::board_of(history);
    said.out += (said.out.empty() ? "" : "\n") + print_board(history, board, args.system);
    said.err += print_findings(board.findings);
    for (exchange::CalendarEvent& event : reminders(history, board, args.system)) events.push_back(std::move(event));
  }
  return args.calendar.empty() ? said : save_calendar(args, events, std::move(said));
}

Said run_due(DueArguments args) {
  if (args.now.empty()) args.now = time_now();
  const auto today = parse_date(std::string_view(args.now).substr(0, 10));
  if (!today) return refused({remarks::not_a_time("--today", args.now)});
  if (args.file.empty()) return with_log_of(args.folder, [&](const Log& log) { return due_of(log, args, *today); });
  const auto bytes = read_for_command_line(args.file);
  if (!bytes) return refused({bytes.error()});
  Findings findings;
  const auto log = log_to_merge(*bytes, findings);
  if (!log) return refused(log.error());
  Said said = due_of(*log, args, *today);
  said.err = print_findings(findings) + said.err;
  return said;
}

}  // namespace

void add_due_command(CLI::App& app, Said& said) {
  const auto args = std::make_shared<DueArguments>();
  CLI::App* command =
      app.add_subcommand("due", "What is due on each bike, when, and why then; reminders for a calendar");
  command->add_option("FILE", args->file, "An exported log, or - for standard input; none: the log in the folder");
  command->add_option("--folder", args->folder, "Folder of the log; none: where the app keeps it");
  command->add_option("--bike", args->bike, "A bike by its nickname or id; none: all");
  command->add_option("--today", args->now, "The day, or the time, to make the list for: 2024-06-01; none: now");
  command->add_option("--calendar", args->calendar, "Write the reminders as a calendar file (iCalendar); - prints it");
  command->add_option("--units", args->system, "Where a bike's own unit isn't known: inch (default) or metric")
      ->transform(
          CLI::CheckedTransformer(std::map<std::string, System>{{"inch", System::Inch}, {"metric", System::Metric}}));
  command->callback([args, &said] { said = run_due(*args); });
}

}  // namespace camside
