// The desktop as the screens see it: Dear ImGui's own text fields, no notches, nothing to keep awake.
#pragma once

#include "screens/platform.hpp"
#include "window.hpp"

namespace camside {

class DesktopPlatform : public screens::Platform {
 public:
  explicit DesktopPlatform(Window& window) : window_(window) {}

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

  void prefer_light(bool on) { light_ = on; }

 private:
  Window& window_;
  bool light_ = false;
};

}  // namespace camside
