#pragma once
// A few words over the picture, for what the page around the canvas would say: they stay until the
// next press or key.

#include <string>
#include <string_view>

#include "web/app/canvas.h"

namespace hs::web::native {

class Notice {
 public:
  // Both must outlive it. Draws itself at the end of each of the canvas's frames.
  Notice(const Canvas& canvas, const View& view);
  Notice(const Notice&) = delete;
  Notice& operator=(const Notice&) = delete;

  void say(std::string words) { words_ = std::move(words); }
  void clear() { words_.clear(); }
  const std::string& words() const { return words_; }

 private:
  void draw() const;

  const Canvas& canvas_;
  const View& view_;
  std::string words_;
};

// What the page would show for a sheet that the canvas asks for ("people:<row>", "oven",
// "why:<rule>"): a rule's words and source; of the other parts, that they are in the page.
std::string words_for_sheet(std::string_view sheet);

}  // namespace hs::web::native
