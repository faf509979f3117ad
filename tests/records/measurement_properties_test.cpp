// Whatever is entered comes back byte for byte, and no bytes at all make the reader fall over.
#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <string>
#include <vector>

#include "records/form.hpp"
#include "records/measurement.hpp"
#include "records/tiny.hpp"
#include "units/format.hpp"

namespace camside::records {
namespace {

rc::Gen<std::string> some_text() {
  return rc::gen::resize(
      12, rc::gen::container<std::string>(rc::gen::elementOf(std::string("abc 019.,-+/°\"\\ä\n{}[]:µ"))));
}

// Valid UTF-8 without NUL: pieces put together.
rc::Gen<std::string> some_utf8() {
  const std::vector<std::string> pieces{"a", "0", " ", "\"", "\\", "\n",  "\t",  "ä",
                                        "µ", "°", "🔧", "{",  "]",  "1e9", "\x7f"};
  return rc::gen::map(rc::gen::container<std::vector<std::string>>(rc::gen::elementOf(pieces)),
                      [](const std::vector<std::string>& parts) {
                        std::string text;
                        for (const std::string& part : parts) text += part;
                        return text;
                      });
}

rc::Gen<Json> some_json_of_any_size(int depth);

// Few items on each level, so that a property takes a second.
rc::Gen<Json> some_json(int depth) {
  return rc::gen::resize(5, some_json_of_any_size(depth));
}

rc::Gen<Json> some_json_of_any_size(int depth) {
  if (depth == 0)
    return rc::gen::oneOf(rc::gen::map(some_utf8(), [](const std::string& s) { return Json(s); }),
                          rc::gen::map(rc::gen::arbitrary<int>(), [](int i) { return Json(i); }),
                          rc::gen::map(rc::gen::arbitrary<double>(), [](double d) { return Json(d); }),
                          rc::gen::map(rc::gen::arbitrary<bool>(), [](bool b) { return Json(b); }),
                          rc::gen::just(Json()));
  return rc::gen::oneOf(some_json(0),
                        rc::gen::map(rc::gen::container<std::vector<Json>>(some_json(depth - 1)),
                                     [](const std::vector<Json>& items) { return Json(items); }),
                        rc::gen::map(rc::gen::container<std::vector<std::pair<std::string, Json>>>(
                                         rc::gen::pair(some_utf8(), some_json(depth - 1))),
                                     [](const std::vector<std::pair<std::string, Json>>& members) {
                                       Json object = Json::object();
                                       for (const auto& [name, value] : members) object[name] = value;
                                       return object;
                                     }));
}

RC_GTEST_PROP(MeasurementProperties, AnyJsonComesBackTheSame, ()) {
  const Json json = *some_json(3);
  const std::string text = write_json(json);
  const auto read = read_json(text);
  RC_ASSERT(read.has_value());
  RC_ASSERT(*read == json);
  RC_ASSERT(write_json(*read) == text);
}

RC_GTEST_PROP(MeasurementProperties, UnknownFieldsSurviveAnywhere, ()) {
  MeasurementFile file = empty_file();
  file.head["unknown"] = *some_json(2);
  Record record = make_record(tiny::kind, "a", "2024-05-14");
  record.json["unknown"] = *some_json(2);
  record.entered()["unknown"] = *some_json(2);
  record.entered()["stations"] = Json::array({Json{{"angle", "0°"}, {"unknown", *some_json(1)}}});
  file.records.push_back(record);
  const std::string text = write_file(file);
  const auto opened = read_file(text);
  RC_ASSERT(opened.has_value());
  RC_ASSERT(write_file(opened->file) == text);
  solve(opened->file.records.front(), tiny::only);  // and does no harm
}

RC_GTEST_PROP(MeasurementProperties, NoBytesMakeTheReaderFallOver, ()) {
  const auto bytes = *rc::gen::arbitrary<std::string>();
  const auto opened = read_file(bytes);
  if (opened) check_file(*opened, tiny::only);
  RC_ASSERT(opened || !opened.error().empty());
}

RC_GTEST_PROP(MeasurementProperties, AnyEnteredValueIsReadOrRefusedByPath, ()) {
  Record record = make_record(tiny::kind, "a", "2024-05-14");
  Json entered = Json::object();
  for (const char* name :
       {"way", "stations", "setup", "limit", "spares", "teeth", "ratio", "day", "plate_off", "who"}) {
    if (*rc::gen::arbitrary<bool>()) entered[name] = *some_json(2);
  }
  record.entered() = entered;
  const Solved s = solve(record, tiny::only);
  RC_ASSERT(s.solved != any_refusal(s.findings));
  for (const Finding& f : s.findings) RC_ASSERT(!f.text.empty());
}

RC_GTEST_PROP(MeasurementProperties, AnyTextTypedIntoAFormIsKept, ()) {
  Record record = make_record(tiny::kind, "a", "2024-05-14");
  add_item(record, "stations", tiny::only);
  for (const char* path :
       {"ratio", "teeth", "setup.graduation", "stations[0].reading", "way", "day", "who", "limit.title"}) {
    const std::string text = *some_text();
    RC_PRE(!text.empty());
    set_text(record, path, text, nullptr, tiny::only);
    for (const FormField& field : form_of(record, tiny::only)) {
      if (field.path == path) RC_ASSERT(field.text == text);
    }
  }
}

RC_GTEST_PROP(MeasurementProperties, LengthsReadFromTextAreThoseEntered, (double mm)) {
  RC_PRE(std::isfinite(mm));
  const double wanted = std::fmod(mm, 5.0);
  Record record = make_record(tiny::kind, "a", "2024-05-14");
  record.entered() = *read_json(R"({"way": "quick", "teeth": 4, "stations": [{"angle": "0°"}]})");
  record.entered()["stations"][0]["reading"] = format_full(wanted, *find_unit(Kind::Length, "mm"));
  const Solved s = solve(record, tiny::only);
  RC_ASSERT(s.solved);
  RC_ASSERT(s.input_as<tiny::Input>()->stations[0].reading.in_mm() == wanted);
}

}  // namespace
}  // namespace camside::records
