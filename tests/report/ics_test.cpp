// The calendar file: read by a reader of its own, which is first tried on the standard's examples.
#include "engine/report/ics.h"

#include <algorithm>
#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "catch_amalgamated.hpp"
#include "engine/base/text.h"
#include "tests/report/ics_reader.h"
#include "tests/support/random.h"
#include "tests/support/sweep.h"

using namespace hs;
using namespace hs::report;
using Catch::Matchers::ContainsSubstring;
using hs::test::IcsReader;
using schedule::Calendar;
using schedule::Task;

namespace {

const IcsHead kHead{"terrace", "20261125T223100Z", "Terrace, the plan", 2};

std::vector<Task> three() {
  std::vector<Task> tasks(3);
  tasks[0] = {.key = "metal.order", .name = "order the metal; see sheet", .who = -1};
  tasks[1] = {.key = "paint.coat_1",
              .name = "first coat",
              .after = {{0}},
              .work_min = 600,
              .wait_min = 240,
              .needs = schedule::kPaintDay};
  tasks[2] = {.key = "doors.on", .name = "doors on, by number", .after = {{1}}, .work_min = 60};
  return tasks;
}

std::string file_of(const std::vector<Task>& tasks, const std::vector<std::string>& notes = {},
                    const IcsHead& head = kHead) {
  const Calendar calendar;
  const auto plan = schedule::plan_of(tasks, calendar);
  REQUIRE(plan);
  const auto text = ics_text(tasks, *plan, calendar, head, notes);
  REQUIRE(text);
  return *text;
}

}  // namespace

TEST_CASE("the reader takes the standard's examples, and refuses what is none",
          "[report][source]") {
  // RFC 5545 section 4, first example, its lines from memory.
  const std::string example =
      "BEGIN:VCALENDAR\r\nPRODID:-//xyz Corp//NONSGML PDA Calendar Version 1.0//EN\r\n"
      "VERSION:2.0\r\nBEGIN:VEVENT\r\nDTSTAMP:19960704T120000Z\r\nUID:uid1@example.com\r\n"
      "ORGANIZER:mailto:jsmith@example.com\r\nDTSTART:19960918T143000Z\r\n"
      "DTEND:19960920T220000Z\r\nSTATUS:CONFIRMED\r\nCATEGORIES:CONFERENCE\r\n"
      "SUMMARY:Networld+Interop Conference\r\nDESCRIPTION:Networld+Interop Conference\r\n"
      "  and Exhibit\\nAtlanta World Congress Center\\n\r\n Atlanta\\, Georgia\r\n"
      "END:VEVENT\r\nEND:VCALENDAR\r\n";
  const auto read = IcsReader(example).read();
  CHECK(read.error.empty());
  std::string plain;
  CHECK(IcsReader::unescape(read.calendar.inside.at(0).one("DESCRIPTION"), plain));
  CHECK(plain ==
        "Networld+Interop Conference and Exhibit\nAtlanta World Congress Center\nAtlanta, Georgia");
  // Each of these breaks one clause.
  const auto broken = [&](std::string_view from, std::string_view to) {
    std::string text = example;
    text.replace(text.find(from), from.size(), to);
    return IcsReader(text).read().error;
  };
  CHECK_FALSE(broken("VERSION:2.0\r\n", "VERSION:2.0\n").empty());
  CHECK_FALSE(broken("UID:uid1@example.com\r\n", "").empty());
  CHECK_FALSE(broken("Atlanta\\, ", "Atlanta, ").empty());
  CHECK_FALSE(broken("19960704T120000Z", "19960704T120000").empty());
  CHECK_FALSE(broken("END:VEVENT\r\n", "").empty());
  CHECK_FALSE(broken("19960920T220000Z", "19960918T143000Z").empty());
  CHECK_FALSE(broken("CONFIRMED", std::string(80, 'x')).empty());
  CHECK_FALSE(broken("STATUS:", "STATUS ").empty());
}

TEST_CASE("text is escaped and folded as the standard says", "[report][source]") {
  // RFC 5545 3.3.11: "Project XYZ Final Review\nConference Room - 3B\nCome Prepared."
  CHECK(ics_escaped("Project XYZ Final Review\nConference Room - 3B\nCome Prepared.") ==
        "Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared.");
  CHECK(ics_escaped("a,b;c\\d") == "a\\,b\\;c\\\\d");
  CHECK(ics_escaped("a\r\nb\rc\nd") == "a\\nb\\nc\\nd");
  CHECK(ics_escaped("a\x01\x7f"
                    "b\xff") == "ab?");
  // 75 octets stay, the 76th goes on a line of its own behind a space.
  CHECK(ics_line("X", std::string(73, 'a')) == "X:" + std::string(73, 'a') + "\r\n");
  CHECK(ics_line("X", std::string(74, 'a')) == "X:" + std::string(73, 'a') + "\r\n a\r\n");
  // A character of three octets that would straddle the end goes whole.
  CHECK(ics_line("X", std::string(72, 'a') + "\xE2\x80\x93") ==
        "X:" + std::string(72, 'a') + "\r\n \xE2\x80\x93\r\n");
}

TEST_CASE("a plan is a calendar file that a strict reader takes", "[report]") {
  const std::string text = file_of(three(), {"", "No rain; stir it.\nTwo coats", ""});
  const auto read = IcsReader(text).read();
  CHECK(read.error.empty());
  const auto& events = read.calendar.inside;
  REQUIRE(events.size() == 5);  // a delivery, two days of work, its waiting, doors
  CHECK(events[0].all("DTEND").empty());
  CHECK(events[1].one("DTSTART") == "20260101T080000");
  CHECK(events[1].one("DTEND") == "20260101T160000");
  CHECK(events[2].one("DTSTART") == "20260102T080000");
  CHECK(events[3].one("DTSTART") == "20260102T100000");
  CHECK(events[3].one("DTEND") == "20260102T140000");
  CHECK(events[3].one("TRANSP") == "TRANSPARENT");
  CHECK(events[4].one("DTSTART") == "20260102T140000");
  CHECK(events[4].one("SUMMARY") == "doors on\\, by number");
  std::string plain;
  REQUIRE(IcsReader::unescape(events[1].one("DESCRIPTION"), plain));
  CHECK_THAT(plain, ContainsSubstring("No rain; stir it.\nTwo coats\nThe weather of that day"));
  CHECK(events[1].one("DTSTAMP") == kHead.stamp);
  CHECK(read.calendar.one("NAME") == "Terrace\\, the plan");
}

TEST_CASE("identities stay when times, names and order change", "[report]") {
  const auto uids = [](const std::string& text) {
    std::vector<std::string> out;
    const auto read = IcsReader(text).read();
    for (const auto& event : read.calendar.inside) out.push_back(event.one("UID"));
    std::sort(out.begin(), out.end());
    return out;
  };
  std::vector<Task> tasks = three();
  const auto before = uids(file_of(tasks));
  CHECK(before.at(0) == "terrace/doors.on/work/1");
  tasks[1].name = "another name";
  tasks[1].wait_min = 1000;
  IcsHead later = kHead;
  later.stamp = "20270101T000000Z";
  CHECK(uids(file_of(tasks, {}, later)) == before);
  std::swap(tasks[1], tasks[2]);
  tasks[1].after = {{2}};
  CHECK(uids(file_of(tasks)) == before);
  // The same input twice is the same file.
  CHECK(file_of(three()) == file_of(three()));
}

TEST_CASE("what makes no calendar file is refused in words", "[report]") {
  const Calendar calendar;
  std::vector<Task> tasks = three();
  const auto plan = schedule::plan_of(tasks, calendar);
  const auto refused = [&](const IcsHead& head) {
    const auto text = ics_text(tasks, *plan, calendar, head);
    return text ? std::string() : sentence(text.error().at(0));
  };
  IcsHead head = kHead;
  for (const char* stamp : {"", "2026-11-25T22:31:00Z", "20261125T223100", "20260230T000000Z",
                            "20261125T243100Z", "20261125T22310xZ"}) {
    head.stamp = stamp;
    CHECK_THAT(refused(head), ContainsSubstring("stamp"));
  }
  head = kHead;
  head.plan_id.clear();
  CHECK_THAT(refused(head), ContainsSubstring("plan"));
  head = kHead;
  head.sequence = -1;
  CHECK_THAT(refused(head), ContainsSubstring("sequence"));
  tasks[1].key = tasks[0].key;
  CHECK_THAT(refused(kHead), ContainsSubstring("two with the key metal.order"));
  tasks.pop_back();
  CHECK_FALSE(ics_text(tasks, *plan, calendar, kHead));
}

TEST_CASE("nothing typed breaks the file, and all of it comes back", "[report][law]") {
  test::Random random(5);
  const std::array<std::string_view, 12> bits{"a",
                                              ",",
                                              ";",
                                              "\\",
                                              "\n",
                                              ":",
                                              "\"",
                                              " ",
                                              "\xC3\xA9",
                                              "\xE2\x85\x9C",
                                              "\xF0\x9F\x94\xA5",
                                              "BEGIN:VEVENT"};
  for (int round = 0; round < test::sweep(200); ++round) {
    std::string typed;
    for (int i = random.below(60); i >= 0; --i) {
      typed += bits[static_cast<std::size_t>(random.below(static_cast<int>(bits.size())))];
    }
    std::vector<Task> tasks = three();
    tasks[2].name = typed;
    const auto read = IcsReader(file_of(tasks, {typed, typed, typed})).read();
    CHECK(read.error.empty());
    REQUIRE(read.calendar.inside.size() == 5);
    std::string plain;
    CHECK(IcsReader::unescape(read.calendar.inside[4].one("SUMMARY"), plain));
    CHECK(plain == typed);
    CHECK(IcsReader::unescape(read.calendar.inside[0].one("DESCRIPTION"), plain));
    CHECK(plain == typed);
  }
}
