// The command line around the engine: with write_folder.cpp all of the engine that touches files.
//
// Everything is computed before anything is written, so that an error never leaves half an output.
// Exit 0: done. 2: bad input, named on stderr, stdout empty (check prints its findings there). 1:
// an internal fault, or an output that could not be written.

#include <algorithm>
#include <cerrno>
#include <cmath>
#include <cstdio>
#include <cstring>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/number_text.h"
#include "engine/base/text.h"
#include "engine/base/version.h"
#include "engine/cli/write_folder.h"
#include "engine/config/json.h"
#include "engine/config/read.h"
#include "engine/config/schema.h"
#include "engine/config/setting.h"
#include "engine/config/stock_csv.h"
#include "engine/evaluate/build.h"
#include "engine/evaluate/check.h"
#include "engine/evaluate/evaluate.h"
#include "engine/evaluate/packet.h"
#include "engine/report/base_template.h"
#include "engine/report/build_sheets.h"
#include "engine/report/cut_json.h"
#include "engine/report/diff_text.h"
#include "engine/report/html_report.h"
#include "engine/report/packet.h"
#include "engine/report/report_json.h"
#include "engine/report/rules_json.h"
#include "engine/report/sheet.h"
#include "engine/report/svg.h"
#include "engine/share/link.h"

// The page's own looks, compiled in (engine/CMakeLists.txt).
namespace hearthsight::embedded {
std::string_view theme_css();
std::string_view report_css();
}  // namespace hearthsight::embedded

namespace {

using hs::Problem;

constexpr int kDone = 0;
constexpr int kFault = 1;
constexpr int kBadInput = 2;

constexpr std::string_view kHelp =
    "hearthsight: counter heights for an outdoor oven, from eye level, mouth and elbows\n"
    "\n"
    "  hearthsight evaluate FILE [--set key.path=value]...   the report, JSON\n"
    "  hearthsight check FILE [--set key.path=value]...      every value that cannot be read or "
    "is\n"
    "                                                        out of range, one a line; what the\n"
    "                                                        station lacks is in the report\n"
    "  hearthsight draw FILE NAME [--units inch|mm] [--cook N] [--set key.path=value]...\n"
    "                                                        a drawing, SVG, 1 unit = 1 mm;\n"
    "                                                        NAME: section, elevation, plan,\n"
    "                                                        share, oven-comfort,\n"
    "                                                        dough-comfort, moves, base-profile,\n"
    "                                                        frame_front, frame_side,\n"
    "                                                        frame_pulled_apart,\n"
    "                                                        step_base_boards, step_base,\n"
    "                                                        step_dry, step_boxes,\n"
    "                                                        step_cabinets, step_sheets,\n"
    "                                                        step_tops, step_block,\n"
    "                                                        step_fronts,\n"
    "                                                        panel_N (N: number in the parts),\n"
    "                                                        base_N (N: board of the base)\n"
    "  hearthsight report FILE [--units inch|mm] [--set key.path=value]...\n"
    "                                                        the whole report, one HTML file\n"
    "  hearthsight template FILE [--paper a4|letter] [--page N] [--units inch|mm]\n"
    "                                 [--set key.path=value]...\n"
    "                                                        full-size strips of the base's cuts:\n"
    "                                                        HTML to print, or page N as SVG\n"
    "  hearthsight packet FILE DIR [--paper a4|letter] [--units inch|mm] [--address URL]\n"
    "                                 [--force] [--set key.path=value]...\n"
    "                                                        the packet for the shop into DIR:\n"
    "                                                        PDF, HTML, SVG, CSV; prints what it\n"
    "                                                        wrote; URL: where the page is "
    "opened,\n"
    "                                                        for the square on the cover\n"
    "  hearthsight diff A B [--units inch|mm]                what changed from A to B, by sheet "
    "of\n"
    "                                                        the packet\n"
    "  hearthsight stock FILE [CSV]                          the stock list, CSV; or the config\n"
    "                                                        with the list of CSV, JSON\n"
    "  hearthsight cut FILE [--steps N]                      a job's cut plan, JSON; N bounds the\n"
    "                                                        search, a step is about 1 us\n"
    "  hearthsight link FILE [--set key.path=value]...       the link's text, without '#'\n"
    "  hearthsight from-link TEXT                            the config of a link, JSON\n"
    "  hearthsight schema                                    JSON Schema of the config\n"
    "  hearthsight fields                                    every input field, JSON\n"
    "  hearthsight rules                                     every rule and source, JSON\n"
    "  hearthsight --help | --version\n"
    "\n"
    "FILE may be '-' for stdin. VALUE is JSON, a word, or a length such as 42 1/2 in, 3' 6 1/2\"\n"
    "or 1080 mm; a bare number is mm; null clears a value that may be left out. A group takes a\n"
    "JSON object and becomes what it says: --set oven.listed_clearance='{\"side_mm\":\"10 in\"}'\n"
    "Exit 0: done. 2: bad input, named on stderr. 1: internal fault.\n";

struct Outcome {
  int status = kDone;
  std::string out;                // for stdout
  std::vector<Problem> problems;  // for stderr
};

Outcome done(std::string out) { return {kDone, std::move(out), {}}; }
Outcome refused(std::vector<Problem> problems) { return {kBadInput, "", std::move(problems)}; }
Outcome refused(std::string path, std::string given, std::string allowed) {
  return refused({{std::move(path), std::move(given), std::move(allowed)}});
}

struct Input {
  std::string name;
  std::string text;
  std::vector<Problem> problems;
};

struct Closer {
  void operator()(std::FILE* file) const { std::fclose(file); }
};

// One byte more than is allowed is enough to refuse a file; the rest stays unread.
Input read_file(std::string_view name) {
  Input input{std::string(name), "", {}};
  std::unique_ptr<std::FILE, Closer> opened;
  std::FILE* file = stdin;
  if (name != "-") {
    opened.reset(std::fopen(input.name.c_str(), "rb"));
    file = opened.get();
  }
  std::size_t got = 0;
  if (file != nullptr) {
    input.text.resize(hs::config::kMostJsonBytes + 1);
    got = std::fread(input.text.data(), 1, input.text.size(), file);
  }
  if (file == nullptr || std::ferror(file) != 0) {
    input.problems.push_back({hs::shortened(name, 80), std::strerror(errno), "a readable file"});
  }
  input.text.resize(got);
  return input;
}

struct Arguments {
  std::string_view file;
  std::vector<std::string_view> settings;
  std::vector<Problem> problems;
};

Arguments parse(const std::vector<std::string_view>& words) {
  Arguments out;
  bool named = false;
  for (std::size_t i = 1; i < words.size(); ++i) {
    const std::string_view word = words[i];
    if (word == "--set" && i + 1 < words.size()) {
      out.settings.push_back(words[++i]);
    } else if (word == "--set") {
      out.problems.push_back({"--set", "", "missing value; give --set key.path=value"});
    } else if (word.starts_with("--set=")) {
      out.settings.push_back(word.substr(6));
    } else if (word.size() > 1 && word[0] == '-') {
      out.problems.push_back({hs::shortened(word), "this option", "--set key.path=value"});
    } else if (named) {
      out.problems.push_back({hs::shortened(word), "a second file", "one file"});
    } else {
      out.file = word;
      named = true;
    }
  }
  if (!named) out.problems.push_back({"FILE", "", "missing; give a config's file, or - for stdin"});
  return out;
}

void append(std::vector<Problem>& all, const std::vector<Problem>& more) {
  all.insert(all.end(), more.begin(), more.end());
}

struct Loaded {
  hs::config::Config config;
  std::vector<Problem> problems;
};

// The file with its settings applied, and everything that is wrong with the result.
Loaded load(const std::vector<std::string_view>& words) {
  const Arguments arguments = parse(words);
  if (!arguments.problems.empty()) return {{}, arguments.problems};
  const Input input = read_file(arguments.file);
  if (!input.problems.empty()) return {{}, input.problems};
  hs::config::Reading reading = hs::config::read_fields(input.text);
  for (const std::string_view setting : arguments.settings) {
    const std::size_t equals = setting.find('=');
    if (equals == std::string_view::npos) {
      reading.problems.push_back({"--set", hs::shortened(setting), "key.path=value"});
      continue;
    }
    append(reading.problems, hs::config::apply_setting(reading.config, setting.substr(0, equals),
                                                       setting.substr(equals + 1)));
  }
  std::vector<Problem> problems = hs::evaluate::check(reading);
  return {std::move(reading.config), std::move(problems)};
}

Outcome check(const std::vector<std::string_view>& words) {
  const Loaded loaded = load(words);
  Outcome outcome;
  if (loaded.problems.empty()) return outcome;
  outcome.status = kBadInput;
  for (const Problem& problem : loaded.problems) outcome.out += hs::sentence(problem) + "\n";
  return outcome;
}

std::string sheet_names() {
  std::string names;
  for (const hs::report::SheetKind& kind : hs::report::sheet_kinds()) {
    names += (names.empty() ? "" : ", ") + std::string(kind.name);
  }
  return names;
}

// Takes an option and its value out of the words.
std::optional<std::string_view> take(std::vector<std::string_view>& words,
                                     std::string_view option) {
  for (std::size_t i = 1; i + 1 < words.size(); ++i) {
    if (words[i] != option || words[i - 1] == "--set") continue;
    const std::string_view value = words[i + 1];
    const auto at = words.begin() + static_cast<std::ptrdiff_t>(i);
    words.erase(at, at + 2);
    return value;
  }
  return {};
}

hs::report::Units take_units(std::vector<std::string_view>& words, std::vector<Problem>& problems) {
  const auto units = take(words, "--units");
  if (units && *units != "mm" && *units != "inch") {
    problems.push_back({"--units", hs::shortened(*units), "inch or mm"});
  }
  return units == "mm" ? hs::report::Units::Millimetre : hs::report::Units::Inch;
}

hs::report::Paper take_paper(std::vector<std::string_view>& words, std::vector<Problem>& problems) {
  const auto named = take(words, "--paper");
  if (named && *named != "a4" && *named != "letter") {
    problems.push_back({"--paper", hs::shortened(*named), "a4 or letter"});
  }
  return named == "letter" ? hs::report::Paper::Letter : hs::report::Paper::A4;
}

// Takes the second word that is neither an option nor its value; empty: there is none.
std::string_view take_second(std::vector<std::string_view>& words) {
  std::size_t plain = 0;
  for (std::size_t i = 1; i < words.size(); ++i) {
    if (words[i] == "--set") {
      ++i;
    } else if ((words[i].size() == 1 || words[i][0] != '-') && ++plain == 2) {
      const std::string_view second = words[i];
      words.erase(words.begin() + static_cast<std::ptrdiff_t>(i));
      return second;
    }
  }
  return {};
}

// The looks are the page's own two files.
Outcome report(std::vector<std::string_view> words) {
  std::vector<Problem> problems;
  const hs::report::Units units = take_units(words, problems);
  const Loaded loaded = load(words);
  append(problems, loaded.problems);
  if (!problems.empty()) return refused(std::move(problems));
  const std::string style = "<style>\n" + std::string(hearthsight::embedded::theme_css()) +
                            std::string(hearthsight::embedded::report_css()) + "</style>\n";
  return done(hs::report::report_html(
      loaded.config, hs::evaluate::evaluate(loaded.config, hs::report::marks_of(units)), units,
      style));
}

// Full-size strips of the base's cuts: all as a document, or one as a drawing.
Outcome cut_template(std::vector<std::string_view> words) {
  std::vector<Problem> problems;
  const hs::report::Units units = take_units(words, problems);
  const hs::report::Paper paper = take_paper(words, problems);
  const auto number = take(words, "--page");
  std::size_t page = 0;  // 0: all of them
  if (number) {
    const double value = hs::parse_decimal(*number).value_or(0);
    if (value >= 1 && value <= 999 && value == std::floor(value)) {
      page = static_cast<std::size_t>(value);
    } else {
      problems.push_back({"--page", hs::shortened(*number), "a page's number, from 1"});
    }
  }
  const Loaded loaded = load(words);
  append(problems, loaded.problems);
  if (!problems.empty()) return refused(std::move(problems));
  std::vector<std::string> without;
  const auto sheets = hs::report::base_template(
      hs::evaluate::evaluate(loaded.config, hs::report::marks_of(units)), paper, units, &without);
  if (sheets.empty()) {
    for (const std::string& panel : without) {
      problems.push_back({"survey.points", "ground under the panel \"" + panel + "\"",
                          "ground that falls less than a sheet of paper is high"});
    }
    if (problems.empty()) {
      return refused("survey.points", "nothing to cut",
                     "readings at both ends of a base panel, where its ground is not level");
    }
    return refused(std::move(problems));
  }
  if (page == 0) {
    return done(hs::report::template_html(sheets, paper, "Strips of the base's cuts"));
  }
  if (page > sheets.size()) {
    return refused("--page", std::to_string(page), "1 to " + std::to_string(sheets.size()));
  }
  return done(hs::report::template_svg(sheets[page - 1], paper));
}

// One drawing. Its own words are taken out; the rest is as for evaluate.
Outcome draw(std::vector<std::string_view> words) {
  std::vector<Problem> problems;
  hs::report::SheetView view;
  std::optional<std::size_t> cook;
  view.units = take_units(words, problems);
  if (const auto number = take(words, "--cook")) {
    const auto value = hs::parse_decimal(*number);
    if (value && *value >= 1 && *value <= hs::config::kMaxCooks && *value == std::floor(*value)) {
      cook = static_cast<std::size_t>(*value) - 1;
    } else {
      problems.push_back({"--cook", hs::shortened(*number), "a cook's number, from 1"});
    }
  }
  const std::string_view name = take_second(words);
  const hs::report::SheetKind* kind = hs::report::find_sheet(name);
  // Drawings of what is built are as many as there are parts.
  if (kind == nullptr && !hs::report::is_build_sheet_name(name)) {
    problems.push_back(
        {"NAME", name.empty() ? "" : hs::shortened(name),
         sheet_names() + ", " + hs::report::frame_sheet_names() + ", panel_N, base_N"});
  }
  const Loaded loaded = load(words);
  append(problems, loaded.problems);
  if (problems.empty() && cook && *cook >= loaded.config.cooks.size()) {
    problems.push_back({"--cook", std::to_string(*cook + 1),
                        "1 to " + std::to_string(loaded.config.cooks.size())});
  }
  if (!problems.empty()) return refused(std::move(problems));
  view.cook = cook.value_or(0);
  const hs::evaluate::Evaluation e =
      hs::evaluate::evaluate_all(loaded.config, hs::report::marks_of(view.units));
  hs::report::Sheet sheet;
  if (kind != nullptr) {
    sheet = kind->draw(loaded.config, e, view);
  } else if (auto drawn = hs::report::build_sheet(name, loaded.config, e, view)) {
    sheet = *std::move(drawn);
  } else {
    const std::string names = hs::report::build_sheet_names(e);
    return refused("NAME", hs::shortened(name),
                   names.empty()
                       ? "another station: no cabinet can be built here and no ground is read, "
                         "see the findings of evaluate"
                       : names);
  }
  return done(hs::report::svg(
      sheet.drawing,
      {.title = sheet.title, .description = sheet.description, .text_mm = sheet.text_mm}));
}

// The whole packet, made in memory first: a fault leaves no half of it.
Outcome packet(std::vector<std::string_view> words) {
  std::vector<Problem> problems;
  hs::report::PacketChoice choice;
  choice.units = take_units(words, problems);
  choice.paper = take_paper(words, problems);
  if (const auto given = take(words, "--address")) {
    const auto address = hs::report::packet_address(*given);
    if (address) choice.address = *address;
    append(problems, address.error());
  }
  const auto forced = std::find(words.begin(), words.end(), "--force");
  const bool force = forced != words.end();
  if (force) words.erase(forced);
  const std::string_view folder = take_second(words);
  if (folder.empty()) problems.push_back({"DIR", "", "missing; give a folder to write into"});
  const Loaded loaded = load(words);
  append(problems, loaded.problems);
  if (!problems.empty()) return refused(std::move(problems));
  const auto files = hs::report::packet_files(
      loaded.config,
      hs::evaluate::evaluate_packet(loaded.config, hs::report::marks_of(choice.units)), choice);
  problems = hs::cli::write_folder(folder, files, force);
  if (!problems.empty()) return refused(std::move(problems));
  std::string list;
  for (const hs::report::PacketFile& file : files) {
    list += std::string(folder) + (folder.ends_with('/') ? "" : "/") + file.name + "\n";
  }
  return done(std::move(list));
}

// The stock list out as CSV, or in: the config with the list of a CSV file.
Outcome stock(std::vector<std::string_view> words) {
  const std::string_view csv = take_second(words);
  const Loaded loaded = load(words);
  if (!loaded.problems.empty()) return refused(loaded.problems);
  if (csv.empty()) return done(hs::config::stock_csv(loaded.config));
  const Input input = read_file(csv);
  if (!input.problems.empty()) return refused(input.problems);
  const auto config = hs::config::with_stock(loaded.config, input.text);
  if (!config) return refused(config.error());
  return done(hs::config::config_json(*config));
}

// What changed from one station to another, by the values of their packets.
Outcome diff(std::vector<std::string_view> words) {
  std::vector<Problem> problems;
  const hs::report::Units units = take_units(words, problems);
  const std::string_view second = take_second(words);
  if (second.empty()) problems.push_back({"B", "", "missing; give two configs' files"});
  const Loaded before = load(words);
  append(problems, before.problems);
  Loaded after;
  if (!second.empty()) after = load({words[0], second});
  append(problems, after.problems);
  if (!problems.empty()) return refused(std::move(problems));
  const hs::evaluate::Marks marks = hs::report::marks_of(units);
  return done(hs::report::diff_text(
      {before.config, hs::evaluate::evaluate_packet(before.config, marks)},
      {after.config, hs::evaluate::evaluate_packet(after.config, marks)}, units));
}

constexpr double kMostSteps = 1e12;

// The plan for one cut job. A step is a measure of work, not of time: the same answer everywhere.
Outcome cut(const std::vector<std::string_view>& words) {
  std::vector<Problem> problems;
  std::optional<std::int64_t> steps;
  std::optional<std::string_view> file;
  const auto read_steps = [&](std::string_view text) {
    const auto value = hs::parse_decimal(text);
    if (value && *value >= 1 && *value <= kMostSteps && *value == std::floor(*value)) {
      steps = static_cast<std::int64_t>(*value);
    } else {
      problems.push_back(
          {"--steps", hs::shortened(text), "a whole number from 1 to 1000000000000"});
    }
  };
  for (std::size_t i = 1; i < words.size(); ++i) {
    const std::string_view word = words[i];
    if (word == "--steps" && i + 1 < words.size()) {
      read_steps(words[++i]);
    } else if (word == "--steps") {
      problems.push_back({"--steps", "", "missing value; give --steps N"});
    } else if (word.starts_with("--steps=")) {
      read_steps(word.substr(8));
    } else if (word.size() > 1 && word[0] == '-') {
      problems.push_back({hs::shortened(word), "this option", "--steps N"});
    } else if (file) {
      problems.push_back({hs::shortened(word), "a second file", "one file"});
    } else {
      file = word;
    }
  }
  if (!file) problems.push_back({"FILE", "", "missing; give a cut job's file, or - for stdin"});
  if (!problems.empty()) return refused(std::move(problems));
  const Input input = read_file(*file);
  if (!input.problems.empty()) return refused(input.problems);
  const auto job = hs::report::read_cut_job(input.text);
  if (!job) return refused(hs::capped(job.error()));
  return done(hs::report::cut_plan_json(*job, steps));
}

Outcome from_link(const std::vector<std::string_view>& words) {
  if (words.size() != 2) return refused("from-link", "", "give one link text, in quotes");
  const auto config = hs::share::from_link(words[1]);
  if (!config) return refused(config.error());
  std::vector<Problem> problems = hs::evaluate::check(*config);
  if (!problems.empty()) return refused(std::move(problems));
  return done(hs::config::config_json(*config));
}

Outcome run(const std::vector<std::string_view>& words) {
  if (words.empty()) return refused("command", "", "missing; hearthsight --help lists them");
  const std::string_view command = words[0];
  if (command == "--help" || command == "-h" || command == "help") return done(std::string(kHelp));
  if (command == "--version") return done("hearthsight " + std::string(hs::version()) + "\n");
  if (command == "check") return check(words);
  if (command == "draw") return draw(words);
  if (command == "report") return report(words);
  if (command == "template") return cut_template(words);
  if (command == "packet") return packet(words);
  if (command == "stock") return stock(words);
  if (command == "diff") return diff(words);
  if (command == "cut") return cut(words);
  if (command == "from-link") return from_link(words);
  if (command == "evaluate" || command == "link") {
    Loaded loaded = load(words);
    if (!loaded.problems.empty()) return refused(std::move(loaded.problems));
    if (command == "link") return done(hs::share::to_link(loaded.config) + "\n");
    return done(
        hs::report::report_json(loaded.config, hs::evaluate::evaluate_packet(loaded.config)));
  }
  const bool table = command == "schema" || command == "fields" || command == "rules";
  if (!table)
    return refused(hs::shortened(command), "this command", "one that hearthsight --help lists");
  if (words.size() > 1) return refused(hs::shortened(words[1]), "this argument", "none");
  if (command == "schema") return done(hs::config::schema_json());
  if (command == "fields") return done(hs::config::fields_json());
  return done(hs::report::rules_json());
}

}  // namespace

int main(int argc, char** argv) {
  const Outcome outcome =
      run(std::vector<std::string_view>(argv + (argc > 0 ? 1 : 0), argv + argc));
  for (const Problem& problem : outcome.problems) {
    std::fprintf(stderr, "%s\n", hs::sentence(problem).c_str());
  }
  const std::string& out = outcome.out;
  if (std::fwrite(out.data(), 1, out.size(), stdout) != out.size() || std::fflush(stdout) != 0) {
    std::fprintf(stderr, "the output could not be written: %s\n", std::strerror(errno));
    return kFault;
  }
  return outcome.status;
}
