#include "engine/report/cuts_csv.h"

#include "engine/base/csv.h"
#include "engine/report/cut_sheets.h"

namespace hs::report {
namespace {

constexpr double kInch_mm = 25.4;

void put_length(CsvWriter& out, double mm) {
  out.number(mm, 1);
  out.number(mm / kInch_mm, 4);
}

}  // namespace

std::string cuts_csv(const evaluate::Cutting& cutting) {
  CsvWriter out;
  out.head({"plan", "copies", "cut_from", "stock", "pass", "saw_runs", "trim", "fence_mm",
            "fence_in", "comes_off", "part", "length_mm", "length_in", "width_mm", "width_in"});
  int plan = 0;
  for (const CutSheet& which : cut_sheets(cutting)) {
    ++plan;
    const evaluate::CutGroup& group = cutting.groups[which.group];
    const evaluate::CutStick& stick = group.sticks[which.stick];
    for (const evaluate::SawPass& pass : stick.passes) {
      out.number(plan, 0);
      out.number(which.alike, 0);
      out.text(group.name);
      out.text(group.stocks[stick.stock].name);
      out.number(pass.number, 0);
      out.text(pass.along ? "along" : "across");
      out.text(pass.trim ? "yes" : "no");
      if (pass.trim) {
        out.empty();
        out.empty();
      } else {
        put_length(out, pass.fence_mm);
      }
      const bool off = pass.off && *pass.off < stick.pieces.size();
      const evaluate::SawnPiece* piece = off ? &stick.pieces[*pass.off] : nullptr;
      using Kind = evaluate::SawnPiece::Kind;
      out.text(piece == nullptr                ? ""
               : piece->kind == Kind::Part     ? "part"
               : piece->kind == Kind::Strip    ? "strip"
               : piece->kind == Kind::Leftover ? "kept"
                                               : "waste");
      if (piece != nullptr && piece->kind == Kind::Part) {
        out.number(group.items[piece->item].part, 0);
      } else {
        out.empty();
      }
      if (piece != nullptr) {
        put_length(out, piece->length_mm);
        put_length(out, piece->width_mm);
      } else {
        for (int i = 0; i < 4; ++i) out.empty();
      }
      out.end_row();
    }
  }
  return out.take();
}

}  // namespace hs::report
