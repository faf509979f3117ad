// The page as the screens see it.
#pragma once

#include <optional>

#include "screens/platform.hpp"

namespace camside::page {

class PagePlatform : public screens::Platform {
 public:
  bool open_text_field(const screens::TextRequest& request) override;
  void close_text_field() override;
  void copy_text(const std::string& text) override;
  void keep_awake(bool on) override;
  bool light_wanted() const override { return light; }
  bool still_wanted() const override { return still; }
  screens::Insets insets() const override { return edges; }
  double seconds() const override;
  std::string local_time() const override;
  screens::Kept kept() const override { return kept_here; }
  void take_update() override;
  std::optional<bool> storage_promised() const override { return promised; }

  // What the page tells.
  void text(std::string text);
  void text_done();
  bool light = false;
  bool still = false;
  screens::Insets edges;
  screens::Kept kept_here;
  std::optional<bool> promised;

 private:
  screens::TextRequest request_;
  bool awake_ = false;
};

}  // namespace camside::page
