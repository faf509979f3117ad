// Bytes of a file named on the command line; and the one place where the command line writes, so that no write, flush
// or close goes unchecked.
#pragma once

#include <optional>
#include <string>
#include <tl/expected.hpp>

#include "findings/finding.hpp"
#include "records/commands.hpp"
#include "records/strict_json.hpp"

namespace camside {

// "-" is standard input; pipes are read to their end; a folder, a device, a missing file or one too large is a finding.
// Reads little more than the largest file we take.
tl::expected<std::string, Finding> read_for_command_line(const std::string& name,
                                                         std::size_t most_bytes = records::largest_file);

// Nothing when all is written and safe on its disk. A file that is there is replaced.
std::optional<Finding> write_for_command_line(const std::string& name, const std::string& bytes);

// From here on lack of memory is said, and ends the program. (An exception would not do: a JSON value asks for memory
// while it is being taken apart.) What was saved stays; an append that was under way may be cut off, as by a kill.
void say_when_memory_runs_out();

// Prints it, and closes standard output: some disks tell only then that they are full. The exit status to end with,
// which is that of bad input when anything could not be written.
int say_on_command_line(const records::Said& said);

}  // namespace camside
