// camside log, camside take-in, camside export: on the log in a folder.
#pragma once

#include <CLI/CLI.hpp>
#include <functional>
#include <string>

#include "log/log.hpp"
#include "records/commands.hpp"

namespace camside {

void add_log_commands(CLI::App& app, records::Said& said);

// For commands that only read: the log of a folder, open while `then` is under way.
records::Said with_log_of(const std::string& folder, const std::function<records::Said(const records::Log&)>& then);

}  // namespace camside
