#include "web/native/notice.h"

#include <algorithm>
#include <cmath>

#include "engine/report/phrases.h"
#include "engine/report/rules_json.h"
#include "engine/rules/rules.h"
#include "imgui.h"
#include "imgui_internal.h"
#include "web/app/ui.h"

namespace hs::web::native {
namespace {

constexpr float kPad = 3 * kUnit;
constexpr float kLine = 1.2F * kText;

// "Words. Source: NFPA. NFPA 58, 2017, 6.9.4 (read second-hand)."
std::string why(std::string_view id) {
  const rules::Rule* rule = rules::find_rule(id);
  if (rule == nullptr) return {};
  std::string out = std::string(rule->title) + ". " + std::string(rules::words_of(*rule).words);
  if (!out.ends_with('.')) out += '.';
  out += " Source: " + report::citation(rule->source);
  if (!rule->clause.empty()) out += ", " + std::string(rule->clause);
  return out + " (" + std::string(rules::basis_words(rule->basis)) + ").";
}

}  // namespace

Notice::Notice(const Canvas& canvas, const View& view) : canvas_(canvas), view_(view) {
  // The canvas has no place for words of others, and needs none in a browser.
  ImGuiContextHook hook;
  hook.Type = ImGuiContextHookType_EndFramePre;
  hook.UserData = this;
  hook.Callback = [](ImGuiContext*, ImGuiContextHook* own) {
    static_cast<const Notice*>(own->UserData)->draw();
  };
  ImGui::AddContextHook(ImGui::GetCurrentContext(), &hook);
}

void Notice::draw() const {
  if (words_.empty()) return;
  const ImGuiIO& io = ImGui::GetIO();
  Ui ui;
  ui.draw = ImGui::GetForegroundDrawList();
  ui.regular = io.Fonts->Fonts[0];
  ui.bold = io.Fonts->Fonts[1];
  ui.theme = view_.theme;
  ui.pixel = 1 / io.DisplayFramebufferScale.x;
  const Rect& picture = canvas_.layout().picture;
  const float width = picture.w - 2 * kPad;
  const float room = width - 2 * kPad;
  // Words do not break at the very edge, so a line more than their length needs.
  const float lines = std::floor(ui.width(words_, kText) / std::max(1.0F, room)) + 1;
  const float whole = lines > 1 ? lines + 1 : 1;
  const float height = std::min(whole * kLine + 2 * kPad, io.DisplaySize.y - 2 * kPad);
  const float y = std::max(kPad, picture.bottom() - height - kPad);
  const Rect box{picture.x + kPad, y, width, height};
  ui.fill(box, Tone::Card);
  ui.frame(box, Tone::Accent, 2);
  ui.paragraph(box.inset(kPad), words_, kText, kTextSmall, static_cast<int>(whole), Tone::Ink);
}

std::string words_for_sheet(std::string_view sheet) {
  const std::size_t colon = sheet.find(':');
  if (colon != std::string_view::npos) {
    std::string reason = why(sheet.substr(colon + 1));
    if (!reason.empty()) return reason;
  }
  return report::capitalised(std::string(sheet.substr(0, colon))) +
         " is in the page: scripts/serve. Its address for this station is in the terminal.";
}

}  // namespace hs::web::native
