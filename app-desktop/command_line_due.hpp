// camside due: the due list of every bike of the log in a folder, or of an exported log; and its calendar file.
#pragma once

#include <CLI/CLI.hpp>

#include "records/commands.hpp"

namespace camside {

void add_due_command(CLI::App& app, records::Said& said);

}  // namespace camside
