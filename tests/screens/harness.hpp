// Drives the whole shell without a window: a size, a finger or a mouse, labels to tap, frames until nothing more is
// wanted.
#pragma once

#include <gtest/gtest.h>
#include <imgui.h>

#include <deque>
#include <fstream>
#include <iterator>
#include <map>
#include <optional>
#include <string>

#include "screens/shell.hpp"
#include "storage/log_keeper.hpp"
#include "storage/log_store.hpp"

namespace camside::screens::test {

// A store in memory that answers at the next poll, as a real one does, and can be told to fail.
class MemoryStore final : public storage::Store {
 public:
  void load(const std::string& name, Whole, LoadDone done) override {
    answers_.push_back([this, name, done = std::move(done)] { done(storage::Loaded{kept[name], false, {}}); });
  }
  void save(const std::string& name, std::string bytes, SaveDone done) override {
    answers_.push_back([this, name, bytes = std::move(bytes), done = std::move(done)] {
      if (failing)
        return done(
            tl::unexpected(Finding{150, Severity::Caution, "", "The disk is full", "Make room, then try again"}));
      kept[name] = bytes;
      ++saves;
      done({});
    });
  }
  void poll() override {
    std::deque<std::function<void()>> now;
    now.swap(answers_);
    for (const auto& answer : now) answer();
  }
  bool busy() const { return !answers_.empty(); }

  std::map<std::string, std::string> kept;
  bool failing = false;
  int saves = 0;

 private:
  std::deque<std::function<void()>> answers_;
};

// The log of the bikes in memory, in the same manner.
class MemoryLog final : public storage::LogStore {
 public:
  void open(OpenDone done) override {
    answers_.push_back([this, done = std::move(done)] {
      records::Log log;
      for (const records::Entry& entry : kept) log.add(entry);
      done(storage::OpenedStore{std::move(log), findings, read_only});
    });
  }
  void append(std::vector<records::Entry> entries, Done done) override {
    answers_.push_back([this, entries = std::move(entries), done = std::move(done)] {
      if (failing)
        return done(tl::unexpected(Finding{352, Severity::Caution, "", "The log's disk is full", "Make room"}));
      kept.insert(kept.end(), entries.begin(), entries.end());
      done({});
    });
  }
  void poll() override {
    if (held) return;
    std::deque<std::function<void()>> now;
    now.swap(answers_);
    for (const auto& answer : now) answer();
  }
  bool busy() const { return !held && !answers_.empty(); }
  // Several windows, where `shared`: another one writes, this one may take over.
  void listen(const Heard& heard, const Lost& /*lost*/) override { tell = heard; }
  bool can_take_over() const override { return shared; }
  void take_over() override { tell({}, false); }

  Heard tell;
  bool shared = false;

  std::vector<records::Entry> kept;
  Findings findings;
  bool read_only = false;
  bool failing = false;
  bool held = false;  // answers nothing just now

 private:
  std::deque<std::function<void()>> answers_;
};

class StillPlatform final : public Platform {
 public:
  bool open_text_field(const TextRequest& request) override {
    asked = request;
    return true;
  }
  void close_text_field() override {}
  void copy_text(const std::string& text) override { copied = text; }
  void keep_awake(bool on) override { awake = on; }
  void ring() override { ++rings; }
  bool light_wanted() const override { return light; }
  bool still_wanted() const override { return true; }
  Insets insets() const override { return edges; }
  double seconds() const override { return now; }
  std::string local_time() const override { return today + "T14:30:00+02:00"; }
  const std::string& page_address() const override { return address; }
  FileWays file_ways() const override { return ways; }
  void give_file(const std::string& name, const std::string& bytes, bool) override {
    gave_name = name;
    gave = bytes;
    given = FileGiven{true, "", ""};
  }
  std::optional<FileGiven> file_given() override { return std::exchange(given, std::nullopt); }
  std::optional<FileCome> file_come() override { return std::exchange(come, std::nullopt); }

  std::string today = "2026-05-03";
  std::string address;  // none: no page runs
  FileWays ways;
  std::string gave_name, gave, copied;
  std::optional<FileGiven> given;
  std::optional<FileCome> come;

  TextRequest asked;
  bool awake = false;
  int rings = 0;
  bool light = false;
  Insets edges;
  double now = 1000;
};

inline std::string font_bytes(const char* name) {
  std::ifstream in(std::string(CAMSIDE_SOURCE_DIR) + "/build/fonts/" + name, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

class Harness {
 public:
  struct Options {
    ImVec2 size{390, 844};
    float text_scale = 1.0f;
    bool touch = true;
    bool light = false;
    std::map<std::string, std::string> kept{};
    bool bikes = false;  // with a log of the bikes
    std::vector<records::Entry> log{};
    Findings log_findings{};
    bool log_read_only = false;
  };

  explicit Harness(const Options& options) : touch_(options.touch) {
    context_ = ImGui::CreateContext();
    ImGuiIO& io = ImGui::GetIO();
    io.IniFilename = nullptr;
    io.DisplaySize = options.size;
    io.BackendFlags |= ImGuiBackendFlags_RendererHasTextures;
    fonts_.words = add_font("regular.otf");
    fonts_.bold = add_font("bold.otf");
    add_font("regular.otf", true);  // as the apps do (assets/fonts/load.hpp)
    store.kept = options.kept;
    platform.light = options.light;
    log_store.kept = options.log;
    log_store.findings = options.log_findings;
    log_store.read_only = options.log_read_only;
    shell = std::make_unique<Shell>(store, platform, fonts_, options.bikes ? &keeper : nullptr);
    run();
    work::Settings settings = shell->settings();
    settings.text_scale = options.text_scale;
    shell->change(settings);
    run();
  }
  ~Harness() {
    shell.reset();
    ImGui::DestroyContext(context_);
  }
  Harness(const Harness&) = delete;
  Harness& operator=(const Harness&) = delete;

  void frame(float dt = 1.0f / 60) {
    ImGuiIO& io = ImGui::GetIO();
    io.DeltaTime = dt;
    ImGui::NewFrame();
    shell->draw();
    ImGui::Render();
    for (ImTextureData* texture : ImGui::GetPlatformIO().Textures) {
      const bool gone = texture->Status == ImTextureStatus_WantDestroy;
      if (texture->Status == ImTextureStatus_WantCreate || gone) texture->SetTexID(gone ? ImTextureID_Invalid : 1);
      texture->SetStatus(gone ? ImTextureStatus_Destroyed : ImTextureStatus_OK);
    }
    ++frames;
  }

  // Until no frame is wanted; more than 120 is a screen that never sleeps.
  int run() {
    int n = 0;
    shell->wake();
    do frame();
    while ((shell->wants_more_frames() || store.busy() || log_store.busy()) && ++n < 120);
    EXPECT_LT(n, 120) << "the screen keeps asking for frames";
    return n;
  }

  const Items& items() const { return shell->items(); }
  const Item* find(const std::string& label) const {
    for (const Item& item : items())
      if (item.pressable() && item.label == label) return &item;
    return nullptr;
  }
  const Item* find_text(const std::string& part) const {
    for (const Item& item : items())
      if (item.label.find(part) != std::string::npos) return &item;
    return nullptr;
  }

  void down(ImVec2 at) { send(at, 1); }
  void up(ImVec2 at) { send(at, 0); }
  void move(ImVec2 at) { send(at, -1); }

  // Fingers on their own, the first of which Dear ImGui hears as a mouse: both put down, moved to where they shall be,
  // lifted one after the other.
  void two_fingers(ImVec2 a, ImVec2 b, ImVec2 to_a, ImVec2 to_b, int steps = 4) {
    shell->finger(1, a, true);
    down(a);
    shell->finger(2, b, true);
    frame();
    for (int i = 1; i <= steps; ++i) {
      const float t = static_cast<float>(i) / static_cast<float>(steps);
      shell->finger(2, {b.x + (to_b.x - b.x) * t, b.y + (to_b.y - b.y) * t}, true);
      shell->finger(1, {a.x + (to_a.x - a.x) * t, a.y + (to_a.y - a.y) * t}, true);
      move({a.x + (to_a.x - a.x) * t, a.y + (to_a.y - a.y) * t});
    }
    shell->finger(1, to_a, false);
    up(to_a);
    shell->finger(2, to_b, false);
    run();
  }

  void tap_at(ImVec2 at) {
    down(at);
    up(at);
    run();
  }
  // Scrolls until the thing can be seen, then taps its middle.
  void tap(const std::string& label) {
    for (int tries = 0; tries < 200; ++tries) {
      const Item* const item = find(label);
      ASSERT_NE(item, nullptr) << "nothing to press called " << label;
      const ImVec2 c{(item->min.x + item->max.x) / 2, (item->min.y + item->max.y) / 2};
      const bool above = c.y < item->clip_min.y + 2;
      const bool below = c.y > item->clip_max.y - 2;
      if (!above && !below) return tap_at(c);
      const ImVec2 from{(item->clip_min.x + item->clip_max.x) / 2, (item->clip_min.y + item->clip_max.y) / 2};
      const float wanted = above ? item->clip_min.y - c.y : c.y - item->clip_max.y;
      const float reach = std::min(wanted + 60.0f, 0.45f * (item->clip_max.y - item->clip_min.y));
      turn_wheel(from, above ? reach : -reach);  // where a finger would drag: a wheel needs a third of the frames
    }
    const Item* const item = find(label);
    FAIL() << label << " can't be scrolled to: it stands at " << item->min.y << ", seen is " << item->clip_min.y
           << " to " << item->clip_max.y;
  }
  void turn_wheel(ImVec2 at, float down) {
    ImGui::GetIO().AddMousePosEvent(at.x, at.y);
    ImGui::GetIO().AddMouseWheelEvent(0, down / 40);
    run();
  }
  void drag(ImVec2 from, ImVec2 to, int steps = 3) {
    if (!touch_) return turn_wheel(from, to.y - from.y);
    down(from);
    for (int i = 1; i <= steps; ++i) {
      const float t = static_cast<float>(i) / static_cast<float>(steps);
      move({from.x + (to.x - from.x) * t, from.y + (to.y - from.y) * t});
    }
    for (int i = 0; i < 3; ++i) frame(0.2F);  // the finger rests: nothing coasts on
    up(to);
    run();
  }
  void type_on_keypad(const std::string& digits) {
    for (const char c : digits) tap(c == '.' ? "Decimal mark" : std::string(1, c));
  }
  void type_physically(const std::string& text) {
    for (const char c : text) ImGui::GetIO().AddInputCharacter(static_cast<unsigned>(c));
    run();
  }
  void press(ImGuiKey key) {
    ImGui::GetIO().AddKeyEvent(key, true);
    frame();
    ImGui::GetIO().AddKeyEvent(key, false);
    run();
  }

  MemoryStore store;
  MemoryLog log_store;
  storage::LogKeeper keeper{log_store};
  StillPlatform platform;
  std::unique_ptr<Shell> shell;
  int frames = 0;

 private:
  ImFont* add_font(const char* name, bool merge = false) {
    bytes_.push_back(font_bytes(name));
    std::string& bytes = bytes_.back();
    EXPECT_FALSE(bytes.empty()) << name << " is missing: run scripts/setup";
    ImFontConfig config;
    config.FontDataOwnedByAtlas = false;
    config.MergeMode = merge;
    return ImGui::GetIO().Fonts->AddFontFromMemoryTTF(bytes.data(), static_cast<int>(bytes.size()), 18, &config);
  }
  void send(ImVec2 at, int button) {
    ImGuiIO& io = ImGui::GetIO();
    io.AddMouseSourceEvent(touch_ ? ImGuiMouseSource_TouchScreen : ImGuiMouseSource_Mouse);
    io.AddMousePosEvent(at.x, at.y);
    if (button >= 0) io.AddMouseButtonEvent(0, button == 1);
    frame();
    frame();
  }

  bool touch_;
  ImGuiContext* context_ = nullptr;
  Fonts fonts_;
  std::deque<std::string> bytes_;
};

}  // namespace camside::screens::test
