// One bike: its facts, and its log as a timeline, newest first. Rows have one height, so that only those near the
// window are made, however long the log is.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <unordered_map>
#include <vector>

#include "screens/bikes/bike_log.hpp"
#include "screens/bikes/due_list.hpp"
#include "screens/bikes/entered_lines.hpp"

namespace camside::screens {

// What an entry is about, in a line: "Odometer: 41,300 mi", "Runout: Pinion shaft, plate off".
std::string words_for(const records::Entry& entry);

class BikePage {
 public:
  struct Asked {
    enum class What : std::uint8_t { Nothing, Open, Add, Facts, Remove, Code };
    What what = What::Nothing;
    std::size_t entry = 0;  // Open
    std::string kind;       // Add
    std::string about;      // Add: the item it is about; may be empty
  };

  void open(std::string bike);
  void close() { bike_.reset(); }
  bool is_open() const { return bike_.has_value(); }
  const std::string& bike() const { return *bike_; }

  // `said`: of a file that left, shown where files leave.
  Asked draw(Ui& ui, BikeLog& log, DueList& due, const std::string& said, System system);

 private:
  struct RowText {
    std::string what;
    std::string about;
    bool apart = false;
  };

  void refresh(const BikeLog& log, System system);
  void find_kinds(const BikeLog& log, const records::Bike& bike);
  bool passes(const BikeLog& log, const records::Line& line) const;
  const RowText& text_of(const BikeLog& log, const records::Bike& bike, std::size_t line);
  const BikeRow* row_of(const BikeLog& log) const;
  bool is_invented(const BikeLog& log) const;
  void draw_facts(Ui& ui, const BikeLog& log);
  void draw_known(Ui& ui, const BikeLog& log);
  void draw_changes(Ui& ui, const BikeLog& log, Asked& asked);
  void draw_due(Ui& ui, BikeLog& log, DueList& due, const std::string& said, System system, Asked& asked);
  void draw_adding(Ui& ui, Asked& asked);
  void draw_filter(Ui& ui);
  void draw_timeline(Ui& ui, BikeLog& log, Asked& asked);
  bool draw_row(Ui& ui, const RowText& text, std::size_t number, float height);

  std::optional<std::string> bike_;
  bool adding_ = false;
  bool known_ = false;
  std::string filter_;  // a kind; empty: all
  int version_ = -1;
  System system_ = System::Inch;
  std::vector<EnteredLine> facts_;
  std::vector<std::string> kinds_;  // that stand in this log: the choices of the filter
  std::vector<std::string> kind_labels_;
  std::vector<std::size_t> shown_;  // lines, newest first
  std::unordered_map<std::size_t, RowText> texts_;
};

}  // namespace camside::screens
