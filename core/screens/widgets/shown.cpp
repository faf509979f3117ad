#include "screens/widgets/shown.hpp"

#include <cstdint>
#include <cstring>
#include <map>
#include <tuple>

#include "units/format.hpp"

namespace camside::screens {

std::string shown(Kind kind, double base, System system) {
  using Key = std::tuple<Kind, System, std::uint64_t>;
  constexpr std::size_t many = 5000;  // a screen shows some hundred at most
  static std::map<Key, std::string> kept;
  std::uint64_t bits = 0;  // a key that orders even what is no number
  static_assert(sizeof bits == sizeof base);
  std::memcpy(&bits, &base, sizeof bits);
  const Key key{kind, system, bits};
  const auto known = kept.find(key);
  if (known != kept.end()) return known->second;
  if (kept.size() >= many) kept.clear();
  return kept.emplace(key, format(kind, base, system)).first->second;
}

}  // namespace camside::screens
