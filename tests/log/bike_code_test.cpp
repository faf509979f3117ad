#include "log/bike_code.hpp"

#include <gtest/gtest.h>
#include <zlib.h>

#include <cstdint>
#include <random>

#include "exchange/qr_code.hpp"
#include "log/demo_bike.hpp"
#include "log/log_commands.hpp"
#include "records/new_id.hpp"

namespace camside::records {
namespace {

const std::string address = "https://camside.example/" + std::string(code_mark);

Stamp stamp(int minute) {
  return {new_id(), "2026-05-03T14:" + std::to_string(10 + minute) + ":00.000+02:00", ""};
}

Log demo_log() {
  Log log;
  int minute = 0;
  for (const Entry& entry : demo_bike([&minute] { return stamp(minute++); })) log.add(entry);
  return log;
}

std::string code_of(const std::string& exported) {
  const auto code = code_of_bike(exported);
  EXPECT_TRUE(code);
  return code.value_or("");
}

int number_of(const std::string& code) {
  const auto text = text_of_bike_code(code);
  return text ? 0 : text.error().number;
}

// Deflate as anybody may write it, who has not read our primer.
std::string deflate_of(std::string text) {
  z_stream stream{};
  EXPECT_EQ(deflateInit2(&stream, Z_BEST_COMPRESSION, Z_DEFLATED, -MAX_WBITS, 8, Z_DEFAULT_STRATEGY), Z_OK);
  std::string packed(text.size() + 100, '\0');
  stream.next_in = reinterpret_cast<Bytef*>(text.data());
  stream.avail_in = static_cast<uInt>(text.size());
  stream.next_out = reinterpret_cast<Bytef*>(packed.data());
  stream.avail_out = static_cast<uInt>(packed.size());
  EXPECT_EQ(deflate(&stream, Z_FINISH), Z_STREAM_END);
  packed.resize(stream.total_out);
  deflateEnd(&stream);
  return packed;
}

// The rest of the format by another hand: `packed` with the checksum of `text`.
std::string foreign_code(const std::string& text, const std::string& packed) {
  std::string bytes;
  for (unsigned shift = 0; shift < 32; shift += 8) bytes += static_cast<char>(fingerprint(text) >> shift & 255U);
  bytes += packed;
  std::string digits = "#bike=2";
  for (std::size_t at = 0; at < bytes.size(); at += 7) {
    std::uint64_t number = 0;
    const std::size_t end = std::min(at + 7, bytes.size());
    for (std::size_t i = at; i < end; ++i) number = number * 256 + static_cast<unsigned char>(bytes[i]);
    const std::string written = std::to_string(number);
    const std::size_t width = std::to_string((std::uint64_t{1} << 8U * (end - at)) - 1).size();
    digits += std::string(width - written.size(), '0') + written;
  }
  return digits;
}

TEST(BikeCode, BringsTheExportByteForByte) {
  const std::string exported = export_log(demo_log());
  const auto text = text_of_bike_code(address + code_of(exported));
  ASSERT_TRUE(text);
  EXPECT_EQ(*text, exported);
}

TEST(BikeCode, IsMergedLikeAFile) {
  const Log log = demo_log();
  const std::string code = " " + address + code_of(export_log(log)) + "\n";
  Findings findings;
  const auto merged = log_to_merge(code, findings);
  ASSERT_TRUE(merged);
  EXPECT_TRUE(findings.empty());
  EXPECT_EQ(export_log(*merged), export_log(log));
}

TEST(BikeCode, AnyBytesOfAnyLengthComeBack) {
  std::mt19937 chance(20261126);
  for (std::size_t length = 0; length < 300; ++length) {
    std::string text;
    for (std::size_t i = 0; i < length; ++i) text += static_cast<char>(chance() % (length % 3 == 0 ? 256U : 7U));
    const auto back = text_of_bike_code(std::string(code_mark) + code_of(text));
    ASSERT_TRUE(back) << length;
    EXPECT_EQ(*back, text);
  }
}

TEST(BikeCode, TheDemoBikeFitsWithRoomToSpare) {
  const std::string code = code_of(export_log(demo_log()));
  EXPECT_LT(code.size(), 1000U);
  ASSERT_TRUE(exchange::qr_code(address, code));
  EXPECT_LE(exchange::qr_code(address, code)->version(), 15);
}

TEST(BikeCode, ATextThatIsFarTooLongIsNotEvenTried) {
  EXPECT_TRUE(code_of_bike(std::string(most_code_text, 'a')));
  EXPECT_FALSE(code_of_bike(std::string(most_code_text + 1, 'a')));
}

// One that an earlier Camside made. Codes lie on paper and in messages: this one must be read for ever.
TEST(BikeCode, TheFormatIsReadForEver) {
  const auto text = text_of_bike_code(
      "https://camside.example/"
      "#bike="
      "2526493858484290915242323868549441753369625616358962008678025508209581411845734129813643660270825113776062066426"
      "3936");
  ASSERT_TRUE(text);
  EXPECT_EQ(*text,
            "{\n\"camside\": 1,\n\"kind\": \"log\",\n\"count\": 1,\n\"entries\": [\n"
            "{\"id\": \"f1\", \"bike\": \"b1\", \"kind\": \"facts\", \"made\": \"2026-05-03T14:30:00.000+02:00\", "
            "\"entered\": {\"nickname\": \"Tern\"}}\n]\n}\n");
}

// The last byte of deflate may hold bits that say nothing: changed ones do no harm.
TEST(BikeCode, EveryCutAndEveryChangedDigitIsFound) {
  const std::string text = "{\"nickname\": \"Tern\", \"model_year\": 2003}";
  const std::string good = std::string(code_mark) + code_of(text);
  for (std::size_t length = code_mark.size(); length < good.size(); ++length)
    EXPECT_EQ(number_of(good.substr(0, length)), 331) << length;
  std::size_t harmless = 0;
  for (std::size_t at = code_mark.size() + 1; at < good.size(); ++at) {
    std::string bad = good;
    bad[at] = bad[at] == '9' ? '0' : static_cast<char>(bad[at] + 1);
    const auto read = text_of_bike_code(bad);
    EXPECT_EQ(read ? *read : text, text) << at;
    EXPECT_EQ(read ? 331 : read.error().number, 331) << at;
    if (read) ++harmless;
  }
  EXPECT_LE(harmless, 2U);
}

TEST(BikeCode, WhatIsNoCodeSaysWhatToDo) {
  for (const char* foreign : {"#bike=", "#bike=x", "#bike=2", "#bike=2hello", "#bike=212", "#bike=2%20", "#bike=2-5"})
    EXPECT_EQ(number_of(foreign), 331) << foreign;
  EXPECT_EQ(number_of("#bike=" + std::string(1000000, '1')), 331);
  EXPECT_EQ(number_of("#bike=2" + std::string(17 * std::size_t{900}, '0')), 331);
  EXPECT_EQ(number_of("#bike=3123"), 332);
  EXPECT_EQ(number_of("#bike=1123"), 331) << "of a format before this one";
  Findings findings;
  const auto merged = log_to_merge("https://camside.example/#bike=2000", findings);
  ASSERT_FALSE(merged);
  EXPECT_EQ(merged.error().front().number, 331);
  EXPECT_FALSE(merged.error().front().remedy.empty());
}

TEST(BikeCode, IsPlainDeflateWithinItsDigits) {
  for (const std::string& text : {std::string("a"), std::string("seven b"), export_log(demo_log())}) {
    const auto read = text_of_bike_code(foreign_code(text, deflate_of(text)));
    ASSERT_TRUE(read) << text;
    EXPECT_EQ(*read, text);
  }
  EXPECT_EQ(number_of(foreign_code("a", deflate_of("b"))), 331) << "another checksum";
  EXPECT_EQ(number_of(foreign_code("a", deflate_of("a") + "b")), 331) << "something behind it";
  EXPECT_EQ(number_of(foreign_code("a", "\x07 no deflate")), 331);
}

// A few thousand digits may unfold to megabytes: no more comes out than may.
TEST(BikeCode, NeverUnpacksMoreThanTheLimit) {
  const std::string most(most_code_text, 'a');
  const auto read = text_of_bike_code(std::string(code_mark) + code_of(most));
  ASSERT_TRUE(read);
  EXPECT_EQ(*read, most);
  for (const std::size_t size : {most_code_text + 1, 80 * most_code_text}) {
    const std::string more(size, 'a');
    const std::string code = foreign_code(more, deflate_of(more));
    EXPECT_LT(code.size(), 16000U) << "else it is refused before";
    EXPECT_EQ(number_of(code), 331) << size;
  }
}

TEST(BikeCode, ALogThatMentionsTheMarkIsNoCode) {
  EXPECT_TRUE(is_bike_code("#bike=2"));
  EXPECT_TRUE(is_bike_code("\n https://camside.example/#bike=2\n"));
  EXPECT_FALSE(is_bike_code("{\"camside\": 1, \"note\": \"https://camside.example/#bike=2\"}"));
  EXPECT_FALSE(is_bike_code("https://camside.example/"));
  EXPECT_FALSE(is_bike_code(""));
}

}  // namespace
}  // namespace camside::records
