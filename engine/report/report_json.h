#pragma once
// The report as JSON ("hearthsight-report/1"): every number of the evaluation with its rule and
// source, in mm, degrees and shares of 1, sentences in mm.
//
// Every key is always there; null means impossible or not applicable, and a finding says why.
// Quanta: 0.1 mm, 0.0001 of a share, 0.1 degree. Same text on every machine for the same config.

#include <string>

#include "engine/config/config.h"
#include "engine/evaluate/evaluate.h"

namespace hs::report {

std::string report_json(const config::Config& config, const evaluate::Evaluation& evaluation);

// 64-bit FNV-1a of the config's canonical JSON, 16 hexadecimal digits.
std::string config_fingerprint(const config::Config& config);

}  // namespace hs::report
