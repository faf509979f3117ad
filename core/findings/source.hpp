// Where a limit or rule of thumb comes from. A Source cannot be built without saying so, and a Limit cannot be built
// without a Source: a number whose limit came from memory says that it did.
#pragma once

#include <cstdint>
#include <string>
#include <utility>

namespace camside {

enum class Basis : std::uint8_t { Standard, Handbook, MakersSheet, Owner, CommonPractice, Memory };

class Source {
 public:
  static Source standard(std::string title_and_edition) { return {Basis::Standard, std::move(title_and_edition)}; }
  static Source handbook(std::string title_edition_table) { return {Basis::Handbook, std::move(title_edition_table)}; }
  static Source makers_sheet(std::string which) { return {Basis::MakersSheet, std::move(which)}; }
  static Source owner(std::string who) { return {Basis::Owner, std::move(who)}; }
  static Source common_practice() { return {Basis::CommonPractice, "common practice, no published source"}; }
  static Source memory() { return {Basis::Memory, "from memory"}; }

  Basis basis() const { return basis_; }
  const std::string& text() const { return text_; }
  friend bool operator==(const Source&, const Source&) = default;

 private:
  Source(Basis basis, std::string text) : basis_(basis), text_(std::move(text)) {}
  Basis basis_;
  std::string text_;
};

template <class Q>
struct Limit {
  Q value;
  Source source;
};

}  // namespace camside
