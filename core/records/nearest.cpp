#include "records/nearest.hpp"

#include <algorithm>
#include <numeric>
#include <vector>

namespace camside::records {

namespace {

constexpr std::size_t longest_compared = 64;

char small(char c) {
  return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : (c == '-' || c == ' ' ? '_' : c);
}

// Levenshtein distance, row by row.
std::size_t distance(std::string_view a, std::string_view b) {
  std::vector<std::size_t> row(b.size() + 1);
  std::iota(row.begin(), row.end(), std::size_t{0});
  for (std::size_t i = 0; i < a.size(); ++i) {
    std::size_t diagonal = row[0]++;
    for (std::size_t j = 0; j < b.size(); ++j) {
      const std::size_t changed = diagonal + (small(a[i]) == small(b[j]) ? 0 : 1);
      diagonal = row[j + 1];
      row[j + 1] = std::min({changed, row[j] + 1, row[j + 1] + 1});
    }
  }
  return row.back();
}

}  // namespace

std::string_view nearest_name(std::string_view mistyped, std::span<const std::string_view> known) {
  if (mistyped.empty() || mistyped.size() > longest_compared) return {};
  std::string_view best;
  std::size_t fewest = std::max<std::size_t>(2, mistyped.size() / 3) + 1;
  for (const std::string_view name : known) {
    const std::size_t changes = distance(mistyped, name);
    if (changes < fewest && changes < name.size()) {
      fewest = changes;
      best = name;
    }
  }
  return best;
}

std::string joined_names(std::span<const std::string_view> names) {
  std::string out;
  for (const std::string_view name : names) {
    if (!out.empty()) out += ", ";
    out += name;
  }
  return out;
}

}  // namespace camside::records
