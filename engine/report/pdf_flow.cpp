#include "engine/report/pdf_flow.h"

#include <algorithm>
#include <array>

#include "engine/report/pdf_drawing.h"
#include "engine/share/qr.h"

namespace hs::report {
namespace {

constexpr PdfColour kSoft{70, 70, 70};
constexpr PdfColour kRule{150, 150, 150};
}  // namespace

PdfFlow::PdfFlow(Pdf& pdf, Paper paper, std::string running)
    : pdf_(pdf), paper_(paper), running_(std::move(running)) {}

void PdfFlow::page(bool lying) {
  const PaperSize size = size_of(paper_);
  wide_ = lying ? size.width_mm : size.height_mm;
  high_ = lying ? size.height_mm : size.width_mm;
  pdf_.add_page(wide_, high_);
  fresh_y_ = y_ = top();
  feet_.push_back({pdf_.pages() - 1, wide_, high_, part_});
}

void PdfFlow::need(double height_mm) {
  if (height_mm > room() && !at_top()) page();
}

void PdfFlow::upright() {
  if (wide_ > high_) page();
}

void PdfFlow::words(std::string_view head, std::string_view text, double size_mm, double indent_mm,
                    PdfFont font, PdfColour colour) {
  const double step = kLeading * size_mm, across = width() - indent_mm;
  std::string bold = letters(head);
  if (!bold.empty()) bold += ' ';
  // The head's words and the text's in one run: what is left of a head's last line is used.
  double used = pdf_width_mm(bold, PdfFont::Bold, size_mm);
  const double x = left() + indent_mm;
  const auto next = [&] {
    need(step);
    y_ -= step;
  };
  std::string rest = letters(text);
  if (used > across) {
    for (const std::string& line : pdf_lines(bold, PdfFont::Bold, size_mm, across)) {
      next();
      pdf_.text({x, y_}, line, PdfFont::Bold, size_mm, colour);
    }
    used = 0;
  } else if (used > 0) {
    next();
    pdf_.text({x, y_}, bold, PdfFont::Bold, size_mm, colour);
    // The first line is as long as the head leaves.
    std::size_t cut = 0;
    for (std::size_t at = 0; at <= rest.size(); ++at) {
      if (at < rest.size() && rest[at] != ' ') continue;
      if (used + pdf_width_mm(rest.substr(0, at), font, size_mm) > across) break;
      cut = at;
    }
    pdf_.text({x + used, y_}, rest.substr(0, cut), font, size_mm, colour);
    rest.erase(0, cut);
  }
  for (const std::string& line : pdf_lines(rest, font, size_mm, across)) {
    next();
    pdf_.text({x, y_}, line, font, size_mm, colour);
  }
}

void PdfFlow::draw(const DocBlock& block, const FigureFit& fit, double x_mm, double y_mm) {
  const Spot origin{x_mm - fit.scale * fit.box.left_mm, y_mm - fit.scale * fit.box.top_mm};
  draw_on(pdf_, block.figure->drawing, block.figure->text_mm, origin, fit.scale);
}

PdfFlow::Placed PdfFlow::place(const DocBlock& block, Units units) {
  constexpr double kLikedHigh_mm = 100;
  Placed out;
  // Under the picture: its caption, then what scale it has.
  out.caption = pdf_lines(letters(block.words), PdfFont::Plain, kSmall_mm, width());
  out.head_mm = block.head.empty() ? 0 : 1.7 * kHead_mm;
  out.foot_mm = kLeading * kSmall_mm * static_cast<double>(out.caption.size() + 1) + 3;
  const double around = out.head_mm + out.foot_mm;
  const double most_high = (block.whole_page ? room() : top() - bottom()) - around;
  out.fit =
      fit_figure(block, {width(), most_high, block.whole_page ? most_high : kLikedHigh_mm}, units);
  return out;
}

double PdfFlow::figure_high_mm(const DocBlock& block, Units units) {
  const std::size_t lost = lost_;  // its words are counted when they are printed
  const double high_mm = place(block, units).high_mm();
  lost_ = lost;
  return high_mm;
}

void PdfFlow::figure(const DocBlock& block, Units units) {
  if (block.whole_page) {
    const bool lying = lies(block);
    if (y_ < fresh_y_ - 0.01 || lying != (wide_ > high_)) page(lying);
  }
  Placed placed = place(block, units);
  const FigureFit& fit = placed.fit;
  const double head = placed.head_mm;
  std::vector<std::string>& caption = placed.caption;
  need(placed.high_mm());
  if (head > 0) {
    skip(kHead_mm * 1.2);
    pdf_.text({left(), y_}, letters(block.head), PdfFont::Bold, kHead_mm);
    skip(head - kHead_mm * 1.2);
  }
  draw(block, fit, left() + (block.whole_page ? (width() - fit.wide_mm()) / 2 : 0), y_);
  skip(fit.high_mm() + 1.5);
  if (!fit.claim.empty()) {
    caption.push_back(letters(fit.claim + ", where both lines of 100 mm at the front measure so."));
  }
  for (const std::string& line : caption) {
    skip(kLeading * kSmall_mm);
    pdf_.text({left(), y_}, line, PdfFont::Plain, kSmall_mm, kSoft);
  }
  skip(3);
}

void PdfFlow::step(const DocBlock& block, Units units) {
  const double wide = block.figure ? kStepWords_mm : width();
  const auto head = pdf_lines(letters(block.head), PdfFont::Bold, kBody_mm, wide);
  const auto text = pdf_lines(letters(block.words), PdfFont::Plain, kCell_mm, wide);
  const double high = kLeading * (kBody_mm * static_cast<double>(head.size()) +
                                  kCell_mm * static_cast<double>(text.size())) +
                      2;
  FigureFit fit;
  if (block.figure) fit = fit_figure(block, figure_room(block, paper_), units);
  need(std::max(high, block.figure ? fit.high_mm() + 6 : 0.0) + 4);
  pdf_.line(std::array{Spot{left(), y_}, Spot{left() + width(), y_}}, {0.2, kRule});
  skip(1.5);
  const double begin = y_;
  for (const std::string& line : head) {
    skip(kLeading * kBody_mm);
    pdf_.text({left(), y_}, line, PdfFont::Bold, kBody_mm);
  }
  for (const std::string& line : text) {
    skip(kLeading * kCell_mm);
    pdf_.text({left(), y_}, line, PdfFont::Plain, kCell_mm);
  }
  double end = y_;
  if (block.figure) {
    const double x = left() + wide + kStepGap_mm;
    draw(block, fit, x, begin - 1);
    end = std::min(end, begin - 1 - fit.high_mm());
    if (!fit.claim.empty()) {
      end -= kLeading * kSmall_mm;
      pdf_.text({x, end}, letters(fit.claim), PdfFont::Plain, kSmall_mm, kSoft);
    }
  }
  y_ = end - 4;
}

void PdfFlow::measure(const DocBlock& block) {
  constexpr double kTick_mm = 1.5, kBeside_mm = 110, kModule_mm = 0.52;
  need(kBar_mm + 12);
  skip(2);
  const Spot corner{left() + 2, y_ - kBar_mm};
  const PdfStroke stroke{0.3, {}};
  for (const Spot& end :
       {Spot{corner.x_mm + kBar_mm, corner.y_mm}, Spot{corner.x_mm, corner.y_mm + kBar_mm}}) {
    pdf_.line(std::array{corner, end}, stroke);
    const bool level = end.y_mm == corner.y_mm;
    const Spot half = level ? Spot{0, kTick_mm} : Spot{kTick_mm, 0};
    // None at the corner, where it would make the other line longer.
    pdf_.line(std::array{Spot{end.x_mm - half.x_mm, end.y_mm - half.y_mm},
                         Spot{end.x_mm + half.x_mm, end.y_mm + half.y_mm}},
              {0.15, {}});
  }
  pdf_.text({corner.x_mm + kBar_mm / 2 - 6, corner.y_mm + 1.5}, "100 mm", PdfFont::Plain,
            kSmall_mm);
  pdf_.text({corner.x_mm + 2, corner.y_mm + kBar_mm - 3}, "100 mm", PdfFont::Plain, kSmall_mm);
  const std::size_t side = block.square.size();
  if (side > 0) {
    const double module = std::max(kModule_mm, 44.0 / static_cast<double>(side));
    std::vector<Box> dark;
    const double x = corner.x_mm + (kBar_mm - module * static_cast<double>(side)) / 2;
    const double y = corner.y_mm + kBar_mm - (kBar_mm - module * static_cast<double>(side)) / 2;
    for (const share::QrRun& run : share::qr_runs(block.square)) {
      dark.push_back({x + module * run.x, y - module * (run.y + 1),
                      x + module * (run.x + run.length), y - module * run.y});
    }
    pdf_.boxes(dark, {});
  }
  double y = y_;
  const double across = width() - kBeside_mm;
  for (const std::string& line :
       pdf_lines(letters(block.words), PdfFont::Plain, kCell_mm, across)) {
    y -= kLeading * kCell_mm;
    pdf_.text({left() + kBeside_mm, y}, line, PdfFont::Plain, kCell_mm);
  }
  skip(kBar_mm + 6);
}

void PdfFlow::finish() {
  const std::string of = " of " + std::to_string(pdf_.pages());
  for (const Foot& foot : feet_) {
    pdf_.turn_to(foot.page);
    const double right = foot.wide - kMargin_mm, high = foot.high - kMargin_mm - 2;
    const double low = kMargin_mm;
    const std::string number = "page " + std::to_string(foot.page + 1) + of;
    const auto ends_right = [&](double y, const std::string& text) {
      pdf_.text({right - pdf_width_mm(text, PdfFont::Plain, kSmall_mm), y}, text, PdfFont::Plain,
                kSmall_mm, kSoft);
    };
    // What is too long for its half of the line is cut: it stands whole on the cover.
    const auto cut = [&](const std::string& text) {
      const auto lines =
          pdf_lines(pdf_letters(text), PdfFont::Plain, kSmall_mm, 0.6 * (right - kMargin_mm));
      return lines.empty() ? std::string() : lines.size() > 1 ? lines[0] + " ..." : lines[0];
    };
    pdf_.text({kMargin_mm, low}, cut(running_), PdfFont::Plain, kSmall_mm, kSoft);
    ends_right(low, number);
    if (!foot.part.empty()) {
      ends_right(high, cut(foot.part));
      pdf_.line(std::array{Spot{kMargin_mm, high - 1.5}, Spot{right, high - 1.5}}, {0.15, kRule});
    }
  }
}

}  // namespace hs::report
