// camside log, camside merge, camside export: on the log in a folder.
#pragma once

#include <CLI/CLI.hpp>

#include "records/commands.hpp"

namespace camside {

void add_log_commands(CLI::App& app, records::Said& said);

}  // namespace camside
