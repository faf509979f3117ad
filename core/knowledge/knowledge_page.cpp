// What the book holds, in words: every engine, fix, part, limit, wait, item and fact has its line here, so that nothing
// is known that nobody can read.
#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "findings/remark.hpp"
#include "knowledge/knowledge.hpp"

namespace camside::knowledge {

namespace {

using Line = Page::Line;

std::string source_of(const std::optional<Source>& source) {
  return source ? source->text() : std::string();
}

template <class T>
bool wanted(const T& item, std::string_view engine) {
  return engine.empty() || concerns(item, engine);
}

std::string with_note(std::string text, const std::string& note) {
  return note.empty() ? text : text + ". " + note;
}

std::string joined(const std::vector<std::string>& words, std::string_view between) {
  std::string text;
  for (const std::string& word : words) text += (text.empty() ? "" : std::string(between)) + word;
  return text;
}

Line line_of(const Fact& f) {
  return {f.text, source_of(f.source)};
}

Line line_of(const Fix& f) {
  std::string text = f.name + ": " + f.text;
  if (!f.conditions.empty()) text += ". To be answered first: " + joined(f.conditions, "; ");
  return {std::move(text), source_of(f.source)};
}

std::string_view basket_text(Basket basket) {
  switch (basket) {
    case Basket::TrueCrank:
      return "for a true crank";
    case Basket::BentCrank:
      return "for a bent crank";
    case Basket::Both:
      break;
  }
  return "";
}

Line line_of(const Part& p) {
  std::string text = p.name;
  if (const std::string_view basket = basket_text(p.basket); !basket.empty()) text += ", " + std::string(basket);
  if (!p.when.empty()) text += ", when: " + p.when;
  return {with_note(std::move(text), p.why), source_of(p.source)};
}

std::string_view bound_text(Bound bound) {
  switch (bound) {
    case Bound::AtMost:
      return "at most";
    case Bound::AtLeast:
      return "at least";
    case Bound::UpTo:
      break;
  }
  return "up to";
}

Line line_of(const LengthLimit& l) {
  return {with_note(fmt::format("{}: {} {}", l.name, bound_text(l.bound), remarks::short_inch_and_mm(l.limit->value)),
                    l.note),
          l.limit->source.text()};
}

Line line_of(const Wait& w) {
  return {with_note(fmt::format("{}: {} to {} min", w.name, static_cast<int>(w.least->in_minutes()),
                                static_cast<int>(w.most->in_minutes())),
                    w.note),
          source_of(w.source)};
}

Line line_of(const Item& i) {
  std::string text = i.name;
  if (i.every) text += ": every " + remarks::miles_and_km(*i.every);
  if (i.months) text += fmt::format("{} {} months", i.every ? " or" : ": every", *i.months);
  if (i.every_worn) text += ", once worn every " + remarks::miles_and_km(*i.every_worn);
  return {with_note(std::move(text), i.note), source_of(i.source)};
}

Line line_of(const look_over::Engine& e) {
  std::string text = e.name + ": " + e.drive;
  return {with_note(std::move(text), e.note), source_of(e.source)};
}

Line line_of(const look_over::Drive& d) {
  return {with_note(d.name, d.tell), ""};
}

Line line_of(const look_over::Risk& r) {
  return {fmt::format("{}: {}. Settled by: {}", r.name, r.why, r.settled_by), source_of(r.source)};
}

template <class T>
void add(std::vector<Page>& pages, std::string heading, const std::vector<T>& list, std::string_view engine) {
  Page page{std::move(heading), {}};
  for (const T& one : list)
    if (wanted(one, engine)) page.lines.push_back(line_of(one));
  if (!page.lines.empty()) pages.push_back(std::move(page));
}

void add_engine(std::vector<Page>& pages, const look_over::Book& book, std::string_view engine) {
  Page what{"The engine", {}};
  Page drives{"What can turn its cams", {}};
  for (const look_over::Engine& e : book.engines) {
    if (!engine.empty() && e.id != engine) continue;
    what.lines.push_back(line_of(e));
    for (const look_over::Drive& d : book.drives) {
      const bool can = std::find(e.drives.begin(), e.drives.end(), d.id) != e.drives.end();
      const Line line = line_of(d);
      const auto same = [&](const Line& l) { return l.text == line.text; };
      if (can && std::none_of(drives.lines.begin(), drives.lines.end(), same)) drives.lines.push_back(line);
    }
  }
  pages.push_back(std::move(what));
  if (!drives.lines.empty()) pages.push_back(std::move(drives));
}

}  // namespace

std::vector<const Item*> items_of(const Knowledge& k, std::string_view engine, const std::vector<std::string>& drives) {
  std::vector<const Item*> all;
  for (const Item& item : k.items) {
    const bool of_engine = engine.empty() ? item.engines.empty() : concerns(item, engine);
    const bool of_drive = item.drives.empty() || std::any_of(drives.begin(), drives.end(), [&](const std::string& d) {
                            return std::find(item.drives.begin(), item.drives.end(), d) != item.drives.end();
                          });
    if (of_engine && of_drive) all.push_back(&item);
  }
  return all;
}

std::vector<Page> known_of(const Knowledge& k, std::string_view engine) {
  std::vector<Page> pages;
  add_engine(pages, k.book, engine);
  add(pages, "Worth knowing", k.facts, engine);
  add(pages, "Looked after", k.items, engine);
  add(pages, "What it can hide", k.book.risks, engine);
  add(pages, "Ways to put the cam side right", k.fixes, engine);
  add(pages, "Replace while in there", k.parts, engine);
  add(pages, "Limits", k.limits, engine);
  add(pages, "Waits", k.waits, engine);
  return pages;
}

}  // namespace camside::knowledge
