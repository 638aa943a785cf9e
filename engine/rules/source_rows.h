#pragma once
// The rows of sources(); constexpr so that the rule table can be checked against them.

#include <array>
#include <cstddef>
#include <iterator>
#include <string_view>

#include "engine/rules/sources.h"

namespace hs::rules {

inline constexpr auto kSources = std::to_array<Source>({
    // Our own ground --------------------------------------------------------------------------
    {"judgement", "Hearthsight", "Our own judgement, open to change", "", Basis::Judgement, ""},
    {"geometry", "Hearthsight", "Geometry on the household's own numbers", "", Basis::Computed, ""},
    {"household", "The household", "A figure that you gave", "", Basis::Judgement,
     "Nothing here says that it is right."},
    {"common_practice", "The trade", "Common practice, no source", "", Basis::CommonPractice, ""},
    {"oven_manual", "The oven's maker", "Installation instructions of this oven", "",
     Basis::SecondHand, "As typed in by the household; read the instructions themselves."},
    {"local_rule", "Building office or fire service", "Local rule", "", Basis::SecondHand,
     "As typed in by the household; ask for the edition in force."},

    // Bodies ----------------------------------------------------------------------------------
    {"ansur2", "US Army Natick Soldier Research, Development and Engineering Center",
     "Anthropometric survey of US Army personnel (ANSUR II), raw data of 6068 adults", "2012",
     Basis::Seen,
     "Statistics recomputed from the raw file; the printed tables were not read. Fit adults, 17 to "
     "58 years."},
    {"snyder1977", "Snyder and others, University of Michigan",
     "Anthropometry of infants, children and youths to age 18, UM-HSRI-77-17", "1977", Basis::Seen,
     "Recomputed from the individual records; elbow heights use the top of the breastbone for the "
     "shoulder."},
    {"cdc2000", "US Centers for Disease Control and Prevention", "Growth charts, stature for age",
     "2000", Basis::Seen, ""},
    {"drillis_contini", "Drillis and Contini",
     "Body segment parameters, in Winter, Biomechanics and Motor Control of Human Movement", "1966",
     Basis::SecondHand, "Through public code that cites Winter 2009, figure 4.1."},
    {"bodyspace", "Pheasant and Haslegrave", "Bodyspace", "3rd edition, 2006", Basis::SecondHand,
     "Through teaching pages that reproduce its tables."},
    {"wheeled_mobility", "University at Buffalo", "Anthropometry of Wheeled Mobility", "",
     Basis::Seen, ""},

    // Working heights and postures ------------------------------------------------------------
    {"ccohs", "Canadian Centre for Occupational Health and Safety",
     "Working in a standing position", "", Basis::SecondHand, ""},
    {"auva", "Austrian workers' accident insurance (AUVA)", "Working heights, standing", "",
     Basis::Seen, ""},
    {"iso11226", "ISO", "ISO 11226, evaluation of static working postures", "2000",
     Basis::SecondHand, "Zones as tabulated in a 2020 study."},
    {"en1005_4", "CEN", "EN 1005-4, working postures in relation to machinery", "",
     Basis::SecondHand, "Zones as given in the help page of a posture tool."},

    // Heat and light --------------------------------------------------------------------------
    {"cfr_24_51", "US Department of Housing and Urban Development",
     "24 CFR part 51 subpart C, siting near hazards: heat that people may be exposed to", "",
     Basis::Seen, "For fires of whole plants; borrowed as what people outdoors bear."},
    {"sfpe", "Purser and McAllister", "SFPE Handbook of Fire Protection Engineering, chapter 63",
     "5th edition", Basis::SecondHand, "Through public code and PD 7974-6 as quoted."},
    {"iso13732", "ISO", "ISO 13732-1, contact with hot surfaces", "2006", Basis::SecondHand,
     "A table that an insulation firm prints; stone, plastic and some times are from memory."},
    {"gouffe1945", "Gouffe", "Corrections d'ouverture des corps-noirs artificiels", "1945",
     Basis::SecondHand, "The leading term, through a public code's comment."},
    {"food_code", "US Food and Drug Administration", "Food Code", "", Basis::Seen,
     "Made for food businesses, not for homes."},

    // Access and kitchens ---------------------------------------------------------------------
    {"ada2010", "US Department of Justice", "ADA Standards for Accessible Design", "2010",
     Basis::Seen, ""},
    {"us_kitchen", "US kitchen trade", "US kitchen planning guidelines", "", Basis::Seen,
     "Guidelines 12 and 23 were read; the aisle figures are quoted second-hand."},
    {"trade_forum", "One expert on a pizza trade forum", "Free floor in front of a deck oven", "",
     Basis::Seen, "A single voice, no data."},

    // What it is built of ---------------------------------------------------------------------
    {"ps20", "US Department of Commerce",
     "PS 20, American Softwood Lumber Standard: sizes of dressed lumber", "2020", Basis::SecondHand,
     "Its size table in public copies; the standard itself was not read."},
    {"ps1", "US Department of Commerce", "PS 1, Structural Plywood: thickness of panels", "2019",
     Basis::SecondHand, "Its tolerance table in public copies."},
    {"us_gauge", "US sheet metal trade", "US standard gauge for stainless sheet", "", Basis::Seen,
     "Charts that print 0.0508 in for 16 gauge are of aluminium; order by thickness."},

    // What it bears ---------------------------------------------------------------------------
    {"pvc_handbooks", "Two makers of cellular PVC board", "Handbooks", "", Basis::Seen,
     "Both say that it carries no structural load."},
    {"pvc_growth", "A maker of cellular PVC plank",
     "Data sheet, linear expansion by ASTM D696: 3.2619e-5 in/in/F", "", Basis::Seen,
     "Other sheets give 2.74e-5 to 3.5e-5."},
    {"steel_sheets", "Makers of stainless steel", "Data sheets of 304", "", Basis::Seen,
     "Density 7900 to 8030 kg/m3, expansion 17.2e-6 to 17.3e-6 for each degree C."},
    {"awc_manual", "American Wood Council", "ASD/LRFD manual, table M9.2-1", "", Basis::Seen,
     "Stiffness of all ratings and strength of 48/24 and 24 oc were read; other strengths are from "
     "memory."},
    {"roark", "Young and Budynas", "Roark's Formulas for Stress and Strain, table 11.4",
     "7th edition", Basis::Seen, ""},
    {"nds_stays", "American Wood Council",
     "National Design Specification, creep (3.5.2) and loads that stay (table 2.3.2)", "2018",
     Basis::Memory, "For engineered buildings; plywood's factors for a dry place."},
    {"nds", "American Wood Council", "National Design Specification, withdrawal of wood screws", "",
     Basis::Seen, "A page that quotes it: 109 lb for each inch of #10 in wood of G 0.45."},
    {"f2057", "ASTM", "F2057, safety of clothing storage units; 16 CFR 1261", "2023",
     Basis::SecondHand, "Made for what stands free in a room; built-ins are out of its scope."},
    {"asce7", "ASCE", "ASCE 7, minimum design loads: wind", "2010 and later", Basis::SecondHand,
     "The formula and one worked example were read; its tables were not."},
    {"niosh", "US National Institute for Occupational Safety and Health",
     "Revised lifting equation", "1994", Basis::Memory,
     "Two people: UK Health and Safety Executive, from memory too."},

    // Weather ---------------------------------------------------------------------------------
    {"gunn_kinzer1949", "Gunn and Kinzer",
     "The terminal velocity of fall for water droplets in stagnant air, J. Meteorology 6, 243",
     "1949", Basis::SecondHand, "Its table 2, through two transcriptions that agree."},

    {"best1950", "Best", "The size distribution of raindrops, Q. J. R. Meteorol. Soc. 76, 16",
     "1950", Basis::Seen, "Abstract only."},
    {"laws_parsons1943", "Laws and Parsons",
     "The relation of raindrop-size to intensity, Trans. Am. Geophys. Union 24, 452", "1943",
     Basis::SecondHand, ""},
    {"iso15927_3", "ISO", "ISO 15927-3, driving rain on upright walls", "", Basis::SecondHand,
     "Lacy's factor, as two public texts give it."},
    // Ground and base -------------------------------------------------------------------------
    {"rousseeuw1984", "Rousseeuw",
     "Least median of squares regression, J. American Statistical Association 79, 871", "1984",
     Basis::Memory, "Scale and limit as in Rousseeuw and Leroy 1987."},
    {"anchor_rule", "A supplier of screw anchors", "Rule of thumb for spacing and edges", "",
     Basis::SecondHand, "The anchor's own table comes first."},

    // The shop ------------------------------------------------------------------------------------
    {"fabricators", "Fabricators of sheet metal", "Advice to those who order folded parts", "",
     Basis::Seen, "Pages of several shops, which disagree: the fabricator's own figures win."},
    {"astm_a480", "ASTM", "A480/A480M, flat-rolled stainless steel: names of finishes", "",
     Basis::Memory, "No. 4 is the brushed one."},
    {"paint_label", "A maker of exterior paint", "A label: coverage, recoat, temperatures", "",
     Basis::Seen, "One label, name withheld; the label in hand takes its place."},
    {"paint_practice", "The paint trade",
     "Practice after ISO 8502-4 and ISO 12944-7; a columnist and a paint institute", "",
     Basis::SecondHand, "The standards themselves were not read."},

    // Fire, gas, power ------------------------------------------------------------------------
    {"nfpa_tips", "NFPA and the US Fire Administration", "Outdoor cooking safety tips", "",
     Basis::SecondHand, "Four public pages agree."},
    {"ifc", "International Code Council", "International Fire Code", "", Basis::SecondHand,
     "As quoted by a city; local law varies and is adopted late."},
    {"fire_departments", "Fire departments", "Advice on hot ash", "", Basis::SecondHand,
     "Four public pages agree."},
    {"cpsc_co", "US Consumer Product Safety Commission",
     "16 CFR 1500.14(b)(6), label for charcoal: carbon monoxide", "", Basis::Seen, ""},
    {"nfpa211", "NFPA", "NFPA 211, chimneys, fireplaces, vents and solid fuel-burning appliances",
     "2016", Basis::SecondHand, ""},
    {"irc", "International Code Council", "International Residential Code", "2006 and later",
     Basis::Seen, "Quotations and adopted copies were read; numbers of clauses move."},
    {"ifgc", "International Code Council", "International Fuel Gas Code, 623", "", Basis::Seen,
     "In a city's adopted copy; written for commercial kitchens."},
    {"as_nzs_5601", "Standards Australia and Standards New Zealand",
     "AS/NZS 5601.1, gas installations: outdoor areas", "", Basis::SecondHand,
     "As an appliance manual gives it."},
    {"nfpa10", "NFPA and UL", "NFPA 10, portable fire extinguishers; UL ratings", "",
     Basis::SecondHand, ""},
    {"z21_58", "ANSI", "Z21.58, outdoor cooking gas appliances", "", Basis::SecondHand,
     "Through the manuals of five makers, which agree."},
    {"z21_97", "ANSI", "Z21.97, outdoor decorative gas appliances", "", Basis::SecondHand,
     "Figures through manuals; that they come from this standard is from memory."},
    {"nfpa58", "NFPA", "NFPA 58, Liquefied Petroleum Gas Code", "2017", Basis::SecondHand, ""},
    {"nec", "NFPA", "NFPA 70, National Electrical Code", "2020 and later", Basis::SecondHand, ""},
    {"babrauskas2007", "Babrauskas, Gray and Janssens",
     "Prolonged exposure of wood to heat, Fire and Materials 31, 125", "2007", Basis::Seen,
     "Abstract only."},
});

inline constexpr std::size_t kNoSource = static_cast<std::size_t>(-1);

// By index: g++ 12 with the undefined-behaviour checks does not take a pointer's comparison with
// nullptr for a constant.
constexpr std::size_t source_index(std::string_view id) {
  for (std::size_t i = 0; i < std::size(kSources); ++i) {
    if (kSources[i].id == id) return i;
  }
  return kNoSource;
}

// True when a figure of this basis may come from this source: it is never known better.
constexpr bool may_cite(std::string_view id, Basis basis) {
  const std::size_t at = source_index(id);
  return at != kNoSource && basis >= kSources[at].basis;
}

}  // namespace hs::rules
