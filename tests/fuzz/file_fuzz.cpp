// Any bytes given to the reader of measurement files: refused with a reason, or opened, checked, solved and written so
// that reading again gives the same.
#include <cmath>
#include <cstdint>
#include <string>
#include <string_view>

#include "promises.hpp"
#include "records/measurement.hpp"

namespace {

using namespace camside;

void check_answer(const Solved& solved) {
  check_words(solved.findings);
  insist(solved.solved || any_refusal(solved.findings), "no answer without a refusal");
  for (const Figure& figure : solved.outcome.figures) {
    insist(std::isfinite(figure.base), "a figure is finite");
    insist(!figure.uncertainty || std::isfinite(*figure.uncertainty), "its uncertainty is finite");
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const auto opened = records::read_file({reinterpret_cast<const char*>(data), size});
  if (!opened) {
    insist(!opened.error().empty(), "a refusal has a finding");
    check_words(opened.error());
    return 0;
  }
  check_words(records::check_file(*opened));
  for (const records::Record& record : opened->file.records) check_answer(records::solve(record));
  const std::string written = records::write_file(opened->file);
  const auto again = records::read_file(written);
  insist(again.has_value(), "what was written can be read");
  insist(records::write_file(again->file) == written, "and is written the same again");
  return 0;
}
