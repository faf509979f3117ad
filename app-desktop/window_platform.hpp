// The desktop as the screens see it: Dear ImGui's own text fields, no notches, nothing to keep awake.
#pragma once

#include <deque>
#include <optional>
#include <string>
#include <utility>

#include "screens/platform.hpp"
#include "window.hpp"

namespace camside {

class DesktopPlatform : public screens::Platform {
 public:
  // `copies` is the folder copies are saved in.
  DesktopPlatform(Window& window, std::string copies) : window_(window), copies_(std::move(copies)) {}

  bool open_text_field(const screens::TextRequest& /*request*/) override { return false; }
  void close_text_field() override {}
  void copy_text(const std::string& text) override;
  void keep_awake(bool /*on*/) override {}
  bool light_wanted() const override { return light_; }
  bool still_wanted() const override { return false; }
  screens::Insets insets() const override { return {}; }
  double seconds() const override;
  void ring() override;
  std::string local_time() const override;

  screens::FileWays file_ways() const override { return {.share = false, .save = true, .pick = false}; }
  void give_file(const std::string& name, const std::string& bytes, bool share) override;
  std::optional<screens::FileGiven> file_given() override { return std::exchange(given_, std::nullopt); }
  std::optional<screens::FileCome> file_come() override;

  void file_dropped(const std::string& path);
  void prefer_light(bool on) { light_ = on; }

 private:
  Window& window_;
  std::string copies_;
  std::optional<screens::FileGiven> given_;
  std::deque<screens::FileCome> came_;
  bool light_ = false;
};

}  // namespace camside
