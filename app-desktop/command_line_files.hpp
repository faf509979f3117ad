// Bytes of a file named on the command line.
#pragma once

#include <optional>
#include <string>
#include <tl/expected.hpp>

#include "findings/finding.hpp"
#include "records/strict_json.hpp"

namespace camside {

// "-" is standard input; pipes are read to their end; a folder, a missing file or one too large is a finding. Reads no
// more than one byte over the largest file we take.
tl::expected<std::string, Finding> read_for_command_line(const std::string& name,
                                                         std::size_t most_bytes = records::largest_file);

// Nothing when all is written. A file that is there is replaced.
std::optional<Finding> write_for_command_line(const std::string& name, const std::string& bytes);

}  // namespace camside
