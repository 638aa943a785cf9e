#include "engine/cook/population.h"

#include "engine/cook/survey.h"

namespace hs::cook {
namespace {

constexpr AdultCell kCells[] = {
#include "engine/cook/adult_cells.inc"
};

}  // namespace

std::span<const AdultCell> adult_cells() { return kCells; }

double adult_share(int men, int women) {
  return 0.5 * (static_cast<double>(men) / kSurveyMen.people +
                static_cast<double>(women) / kSurveyWomen.people);
}

Body body_of(const AdultCell& cell, double shoe_mm) {
  config::Cook cook;
  cook.stature_mm = cell.stature_mm;
  cook.build = cell.survey_men ? config::Build::AdultA : config::Build::AdultB;
  cook.eye_height_mm = cell.eye_mm + shoe_mm;
  cook.elbow_height_mm = cell.elbow_mm + shoe_mm;
  cook.shoulder_height_mm = cell.shoulder_mm + shoe_mm;
  cook.shoe_mm = shoe_mm;
  return body_of(cook);
}

}  // namespace hs::cook
