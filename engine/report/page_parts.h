#pragma once
// The parts of page_json(): its sections and its whys.

#include <string>
#include <string_view>
#include <vector>

#include "engine/base/json_writer.h"
#include "engine/report/summary.h"
#include "engine/report/table.h"

namespace hs::report {

struct Page {
  const config::Config& config;
  const evaluate::Evaluation& evaluation;
  Units units;

  std::string length(double mm) const { return plain_length(mm, units, true); }
  const std::string& cook_name(std::size_t i) const { return config.cooks[i].name; }
};

struct Item {
  std::string id;
  std::string_view verdict;
  std::string title, sentence;
  std::string_view why;
};

struct Section {
  std::string_view id, title;
  std::string intro;
  std::vector<Table> tables{};  // those without rows are left out
  std::vector<Item> items{};
};

// The station's own title, or what it is where it has none.
std::string station_title(const config::Config& config);

std::vector<Section> sections(const Page& page);

// Every rule and caution whose number stands somewhere in these, once.
std::vector<std::string_view> explained(const Page& page, const std::vector<Section>& sections);

// The tables of the sections that have some.
std::vector<Table> people_tables(const Page& page);
std::vector<Table> arrangement_tables(const Page& page);
std::vector<Table> fit_tables(const Page& page);  // engine/report/fit_tables.cpp
std::vector<Table> sensitivity_tables(const Page& page);
std::vector<Table> clearance_tables(const Page& page);
std::vector<Table> weather_tables(const Page& page);  // engine/report/surroundings_tables.cpp
std::vector<Table> reach_tables(const Page& page);
std::vector<Table> heat_tables(const Page& page);
std::vector<Table> light_tables(const Page& page);
std::vector<Table> survey_tables(const Page& page);   // engine/report/survey_tables.cpp
std::vector<Table> loads_tables(const Page& page);    // engine/report/loads_tables.cpp
std::vector<Table> station_tables(const Page& page);  // engine/report/station_tables.cpp
std::vector<Table> build_tables(const Page& page);    // the same; only where there is a build
std::vector<Table> trial_tables(const Page& page);
std::vector<Table> source_tables(const Page& page);

// "eye height".
std::string_view measure_words(evaluate::Measure measure);
// "+⅜ in", "−⅜ in", "none"; below what is shown it is nothing.
std::string moves(const Page& page, double mm);

// "Ana's elbow moves the oven most, by ⅝ in: measure it."; empty where nothing is estimated.
std::string sharpest_measurement(const Page& page);

// The recommended height of this headline with the numbers that make it; empty where there is none.
std::string height_reason(const Page& page, std::string_view headline);
// One item for each headline with a height: how it comes about.
std::vector<Item> height_items(const Page& page);

// The object of whys for these rule and caution ids.
void put_whys(JsonWriter& out, const Page& page, const std::vector<std::string_view>& ids);

}  // namespace hs::report
