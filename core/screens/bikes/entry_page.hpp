// One line of a bike's log, opened: what was entered, by whom and when, what stood there before, and what can be done
// with it. Entries in two versions stand side by side until one is taken.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "screens/bikes/bike_log.hpp"
#include "screens/bikes/entered_lines.hpp"

namespace camside::screens {

class EntryPage {
 public:
  enum class Asked : std::uint8_t { Nothing, Correct, Reopen };

  void open(std::string bike, std::size_t entry);
  void close() { open_ = false; }
  bool is_open() const { return open_; }
  std::string title(const BikeLog& log) const;

  Asked draw(Ui& ui, BikeLog& log, System system);
  // The entry to correct or to reopen.
  const records::Entry* entry(const BikeLog& log) const;

 private:
  struct Card {
    std::string heading;
    std::string made;
    std::string note;
    std::vector<EnteredLine> lines;
    std::size_t entry = 0;
  };

  const records::Line* line(const BikeLog& log) const;
  void refresh(const BikeLog& log, System system);
  Card card_of(const BikeLog& log, std::size_t entry, System system) const;
  void draw_card(Ui& ui, const Card& card) const;
  void draw_apart(Ui& ui, BikeLog& log, const records::Line& line);
  void keep(BikeLog& log, const records::Line& line, std::size_t entry);
  Asked draw_actions(Ui& ui, BikeLog& log, const records::Line& line);
  void remove(BikeLog& log, const records::Line& line);
  void bring_back(BikeLog& log, const records::Line& line);

  bool open_ = false;
  std::string bike_;
  std::size_t entry_ = 0;  // one of the line, whatever has taken its place since
  int version_ = -1;
  System system_ = System::Inch;
  std::vector<Card> now_;
  std::vector<Card> before_;
};

}  // namespace camside::screens
