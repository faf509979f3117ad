// A program on a simulated disk, for the tests of the log's engine.
#pragma once

#include <gtest/gtest.h>

#include <set>
#include <string>
#include <vector>

#include "log/log_samples.hpp"
#include "storage/log_engine.hpp"
#include "storage/simulated_disk.hpp"

namespace camside::storage {

using namespace records::samples;
using records::Entry;
using records::Json;
using records::Log;

inline std::set<std::string> contents(const Log& log) {
  std::set<std::string> all;
  for (const Entry& e : log.entries()) all.insert(content_of(e));
  return all;
}

inline Entry nth(int n) {
  return odometer("id" + std::to_string(n), n, std::to_string(41'300 + n) + " mi");
}

// A program that opens the log, adds entries one by one and remembers what was confirmed.
struct Program {
  explicit Program(SimulatedDisk& disk) : files(disk), engine(files) {
    auto answer = engine.open();
    opens = answer.has_value();
    if (opens) opened = std::move(*answer);
    log = opened.log;
  }
  bool add(const std::vector<Entry>& entries, std::set<std::string>* confirmed = nullptr) {
    for (const Entry& e : entries) log.add(e);
    const auto done = engine.append(entries);
    if (!done) last = done.error();
    if (done && confirmed != nullptr)
      for (const Entry& e : entries) confirmed->insert(content_of(e));
    return done.has_value();
  }
  bool add(const Entry& e, std::set<std::string>* confirmed = nullptr) { return add(std::vector<Entry>{e}, confirmed); }

  SimulatedFiles files;
  LogEngine engine;
  OpenedStore opened;
  Log log;
  Finding last;
  bool opens = false;
};

inline Log reopened(SimulatedDisk& disk) {
  Program again(disk);
  EXPECT_TRUE(again.opens);
  return again.log;
}

inline SimulatedDisk disk_with(int count) {
  SimulatedDisk disk;
  Program program(disk);
  for (int n = 1; n <= count; ++n) EXPECT_TRUE(program.add(nth(n)));
  return disk;
}

inline std::set<std::string> minus(const std::set<std::string>& a, const std::set<std::string>& b) {
  std::set<std::string> rest;
  for (const std::string& one : a)
    if (b.count(one) == 0) rest.insert(one);
  return rest;
}

}  // namespace camside::storage
