#include "engine/power/cutout.h"

#include <algorithm>
#include <cmath>

namespace hs::power {
namespace {

constexpr double kTiny = 0.05;  // half a quantum of length

struct Range {
  double low = 0, high = 0;
  double size() const { return high - low; }
};

Range along(const Block& b, Through axis) {
  switch (axis) {
    case Through::X:
      return {b.left_mm, b.right_mm};
    case Through::Y:
      return {b.near_mm, b.far_mm};
    case Through::Z:
      return {b.bottom_mm, b.top_mm};
  }
  return {};
}
// Positive: apart; negative: overlapping.
double apart(const Range& a, const Range& b) { return std::max(a.low - b.high, b.low - a.high); }

// Between two openings of one panel; 0: they meet. A round one is its middle and a radius.
double web_between(const Cutout& a, const Cutout& b) {
  const auto core = [](const Cutout& cut, double low_mm, double size_mm) {
    const double off = cut.round ? size_mm / 2 : 0;
    return Range{low_mm + off, low_mm + size_mm - off};
  };
  const double u = apart(core(a, a.u_mm, a.wide_mm), core(b, b.u_mm, b.wide_mm));
  const double v = apart(core(a, a.v_mm, a.high_mm), core(b, b.v_mm, b.high_mm));
  const double radii = (a.round ? a.wide_mm / 2 : 0) + (b.round ? b.wide_mm / 2 : 0);
  return std::max(std::hypot(std::max(u, 0.0), std::max(v, 0.0)) - radii, 0.0);
}

struct Cutter {
  std::span<const Panel> panels;
  std::span<const Fitting> fittings;
  std::span<const Keepout> keepouts;
  Cutting out{};

  void cut(std::size_t index) {
    const Fitting& fitting = fittings[index];
    if (fitting.panel >= panels.size()) {
      out.remarks.push_back(
          {Verdict::Fail, index, {}, "is let into a panel that is not there", 0, 0, "computed"});
      return;
    }
    const Panel& panel = panels[fitting.panel];
    const Range thick = along(panel.place, panel.thick), deep = along(fitting.body, panel.thick);
    const Through u = u_of(panel.thick), v = v_of(panel.thick);
    const Range pu = along(panel.place, u), pv = along(panel.place, v);
    const Range fu = along(fitting.body, u), fv = along(fitting.body, v);
    // A box may sit in the panel's near side; a wire must come out at the other.
    const bool reaches =
        apart(thick, deep) < -kTiny && apart(pu, fu) < -kTiny && apart(pv, fv) < -kTiny;
    const bool passes = fitting.kind != Kind::WireHole ||
                        (deep.low <= thick.low + kTiny && deep.high >= thick.high - kTiny);
    if (!reaches || !passes) {
      out.remarks.push_back(
          {Verdict::Fail, index, {}, "does not go through its panel", 0, 0, "computed"});
      return;
    }
    Cutout cutout;
    cutout.fitting = index;
    cutout.round = fitting.kind == Kind::WireHole;
    cutout.u_mm = fu.low - pu.low;
    cutout.v_mm = fv.low - pv.low;
    cutout.wide_mm = cutout.round ? std::max(fu.size(), fv.size()) : fu.size();
    cutout.high_mm = cutout.round ? cutout.wide_mm : fv.size();
    if (cutout.round) {
      cutout.u_mm -= (cutout.wide_mm - fu.size()) / 2;
      cutout.v_mm -= (cutout.wide_mm - fv.size()) / 2;
    }
    cutout.rim_mm = std::min({cutout.u_mm, cutout.v_mm, pu.size() - cutout.u_mm - cutout.wide_mm,
                              pv.size() - cutout.v_mm - cutout.high_mm});
    out.cutouts.push_back(cutout);
    if (panel.painted) {
      out.remarks.push_back({Verdict::Warn,
                             index,
                             {},
                             "is cut after paint: its edge wants the repair",
                             0,
                             0,
                             "common practice"});
    }
    const double needed = cutout.round ? kHoleRim_mm : kRim_mm;
    if (cutout.rim_mm < needed - kTiny) {
      out.remarks.push_back({Verdict::Fail,
                             index,
                             {},
                             "comes too near to its panel's edge",
                             cutout.rim_mm,
                             needed,
                             cutout.round ? "NEC 300.4(A)(1), from memory" : "our judgement"});
    }
  }

  // What stays between the openings of each panel.
  void webs() {
    for (Cutout& one : out.cutouts) {
      bool meets = false;  // what stands in one place is told as that
      for (const Cutout& other : out.cutouts) {
        const Fitting& a = fittings[one.fitting];
        const Fitting& b = fittings[other.fitting];
        if (one.fitting == other.fitting || a.panel != b.panel) continue;
        const double web_mm = web_between(one, other);
        one.web_mm = std::min(one.web_mm.value_or(web_mm), web_mm);
        meets |= gap_mm(a.body, b.body) < -kTiny;
      }
      if (!meets && one.web_mm && *one.web_mm < kRim_mm - kTiny) {
        out.remarks.push_back({Verdict::Fail,
                               one.fitting,
                               {},
                               "comes too near to the next opening",
                               *one.web_mm,
                               kRim_mm,
                               "our judgement"});
      }
    }
  }

  void check(std::size_t index, std::size_t other) {
    const Fitting& fitting = fittings[index];
    const Keepout& keepout = keepouts[other];
    const double gap = gap_mm(fitting.body, keepout.place);
    const auto say = [&](Verdict verdict, std::string_view what, double limit,
                         std::string_view source) {
      out.remarks.push_back({verdict, index, other, what, gap, limit, source});
    };
    switch (keepout.zone) {
      case Zone::Drawer:
      case Zone::Slide:
      case Zone::Other:
        if (gap < -kTiny) {
          say(Verdict::Fail, "stands in the way of", 0, "computed");
        } else if (keepout.clear_mm && gap < *keepout.clear_mm - kTiny) {
          say(Verdict::Warn, "leaves too little room to", *keepout.clear_mm, "as given");
        }
        return;
      case Zone::GasBay:
        if (gap < -kTiny && fitting.kind == Kind::WireHole) {
          say(Verdict::Unknown,
              "passes where the cylinder stands: ask the licensed electrician and gas fitter, "
              "about",
              0, "no source");
        } else if (gap < -kTiny) {
          say(Verdict::Fail, "is inside the cylinder's bay:", 0,
              "NFPA 58 (2017) 6.3.4.3, figure I.1(a)");
        }
        return;
      case Zone::GasValve:
        if (fitting.kind == Kind::WireHole) return;  // nothing in it sparks
        if (gap < kSpark_mm - kTiny) {
          say(Verdict::Fail, "can spark too near to", kSpark_mm,
              "NFPA 58 (2017) 6.3.4.3, figure I.1(a)");
        }
        return;
      case Zone::Mouth:
      case Zone::HotTop:
        if (gap < -kTiny) {
          say(Verdict::Fail, "stands in", 0, "computed");
        } else if (!keepout.clear_mm) {
          say(Verdict::Unknown,
              "has no listed distance: read the oven's manual, ask the licensed electrician, about",
              0, "no source");
        } else if (gap < *keepout.clear_mm - kTiny) {
          say(Verdict::Fail, "stands nearer than its listing allows to", *keepout.clear_mm,
              "the oven's listing");
        }
        return;
    }
  }
};

constexpr std::string_view kBefore[] = {
    "Mark every outlet, lamp box and wire hole on its panel before any paint, and hold the real "
    "box against the mark.",
    "Cut it, and round its inner corners.",
    "Seal the cut edge with the primer, twice, as any other edge; the first coat soaks in.",
    "Then paint the panel. Fit the box when the paint is hard; seal round its cover, open below.",
};
constexpr std::string_view kRepair[] = {
    "Let the paint get hard first: tape lifts paint that is only dry to the touch.",
    "Tape both faces over the line, mark on the tape, and score the line through the paint.",
    "Cut with a fine blade from the face that shows least; drill corners before sawing.",
    "Sand the chipped edge of the paint flat; wipe the dust off.",
    "Seal the bare cut edge with the primer, twice, before any rain; the first coat soaks in.",
    "Touch up each face in its own colour, and wait the paint's time before the box goes in.",
};

}  // namespace

std::string_view kind_name(Kind kind) {
  switch (kind) {
    case Kind::OutletBox:
      return "outlet box";
    case Kind::LampBox:
      return "lamp box";
    case Kind::WireHole:
      return "wire hole";
  }
  return "";
}

Through u_of(Through thick) { return thick == Through::X ? Through::Y : Through::X; }
Through v_of(Through thick) { return thick == Through::Z ? Through::Y : Through::Z; }

double gap_mm(const Block& a, const Block& b) {
  double square = 0, deepest = -1e300;
  for (const Through axis : {Through::X, Through::Y, Through::Z}) {
    const double one = apart(along(a, axis), along(b, axis));
    deepest = std::max(deepest, one);
    if (one > 0) square += one * one;
  }
  return deepest > 0 ? std::sqrt(square) : deepest;
}

Cutting cut_panels(std::span<const Panel> panels, std::span<const Fitting> fittings,
                   std::span<const Keepout> keepouts) {
  Cutter cutter{panels, fittings, keepouts};
  for (std::size_t i = 0; i < fittings.size(); ++i) {
    cutter.cut(i);
    for (std::size_t j = 0; j < keepouts.size(); ++j) cutter.check(i, j);
    // Two fittings in one place.
    for (std::size_t j = 0; j < i; ++j) {
      const double gap = gap_mm(fittings[i].body, fittings[j].body);
      if (gap < -kTiny) {
        cutter.out.remarks.push_back(
            {Verdict::Fail, i, {}, "stands where another one stands", gap, 0, "computed"});
      }
    }
  }
  cutter.webs();
  return std::move(cutter.out);
}

std::string fitting_name(const Fitting& fitting) {
  std::string text(kind_name(fitting.kind));
  if (!fitting.name.empty()) {
    text += ", ";
    text += fitting.name;
  }
  return text;
}

std::string words(const Remark& remark, std::span<const Fitting> fittings,
                  std::span<const Keepout> keepouts, Unit unit) {
  const auto told = [&](double mm) {
    return unit == Unit::Mm ? mm_text(mm, 0) : inches_text(mm, 16);
  };
  std::string text;
  if (remark.fitting < fittings.size()) {
    text = fitting_name(fittings[remark.fitting]) + ": ";
  }
  text += remark.what;
  if (remark.keepout && *remark.keepout < keepouts.size()) {
    text += ' ';
    text += keepouts[*remark.keepout].name;
  }
  if (remark.limit_mm > 0) {
    text += remark.measured_mm < 0 ? " (overlap " : " (";
    text += told(std::abs(remark.measured_mm)) + ", at least " + told(remark.limit_mm) + ')';
  } else if (remark.measured_mm < 0) {
    text += " (overlap " + told(-remark.measured_mm) + ')';
  }
  text += '.';
  return text;
}

std::span<const std::string_view> cutting_steps(bool painted) {
  if (painted) return kRepair;
  return kBefore;
}

}  // namespace hs::power
