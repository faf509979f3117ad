// The page as the screens see it.
#pragma once

#include <deque>
#include <optional>
#include <utility>

#include "screens/platform.hpp"

namespace camside::page {

class PagePlatform : public screens::Platform {
 public:
  bool open_text_field(const screens::TextRequest& request) override;
  void close_text_field() override;
  std::string text_field_open() const override { return request_.field; }
  void place_text_field(const screens::TextPlace& place) override;
  void copy_text(const std::string& text) override;
  void keep_awake(bool on) override;
  bool light_wanted() const override { return light; }
  bool still_wanted() const override { return still; }
  screens::Insets insets() const override { return edges; }
  double seconds() const override;
  void ring() override;
  std::string local_time() const override;
  screens::Kept kept() const override { return kept_here; }
  bool all_here() const override { return all_came; }
  void take_update() override;
  std::optional<bool> storage_promised() const override { return promised; }

  const std::string& page_address() const override { return address; }
  screens::FileWays file_ways() const override { return {.share = can_share, .save = true, .pick = true}; }
  void give_file(const std::string& name, const std::string& bytes, bool share) override;
  void pick_file() override;
  std::optional<screens::FileGiven> file_given() override { return std::exchange(given, std::nullopt); }
  std::optional<screens::FileCome> file_come() override;

  // What the page tells.
  void text(std::string text);
  void text_done();
  bool light = false;
  bool still = false;
  screens::Insets edges;
  screens::Kept kept_here;
  bool all_came = false;
  std::optional<bool> promised;
  bool can_share = false;
  std::string address;
  std::optional<screens::FileGiven> given;
  std::deque<screens::FileCome> came;

 private:
  screens::TextRequest request_;
  bool awake_ = false;
  struct Clocks {
    double ticks_s = 0.0, wall_s = 0.0, passed_s = 0.0;
  };
  mutable Clocks clocks_;
};

}  // namespace camside::page
