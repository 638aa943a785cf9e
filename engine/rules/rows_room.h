#pragma once
// Rules about room to move a peel, doors, drawers and a wheelchair.

#include "engine/rules/rule_row.h"

namespace hs::rules {

inline constexpr RuleRow kRoomRows[] = {
    {.id = "room.peel_turn",
     .title = "Room to turn the peel",
     .unit = Unit::Length,
     .harm = Harm::Burn,
     .measures = "free ground in front of the counter",
     .against = "how far behind the counter's edge the handle sweeps",
     .source = "geometry",
     .clause = "",
     .basis = Basis::Computed,
     .words = "The blade's tip just clear of the mouth, the cook at the working distance: turning "
              "about the body, the handle's end sweeps behind it. Lifting the peel or pulling it "
              "in takes less.",
     .ok = "The peel turns about the cook with {margin} to spare behind.",
     .warn = "Turning the peel sweeps {limit_about} of ground and there is {measured}: whoever "
             "passes behind gets the handle.",
     .fail = "",
     .unknown = "Nobody has said how much free ground there is; turning the peel sweeps "
                "{limit_about}.",
     .inputs = "reach.peel_room reach.nearest_standoff"},
    {.id = "room.drawer",
     .title = "Room before an open drawer",
     .unit = Unit::Length,
     .harm = Harm::Nuisance,
     .measures = "free ground in front of the counter",
     .against = "how far it opens and 600 mm (24 in) to stand or crouch",
     .source = "judgement",
     .clause = "",
     .basis = Basis::Judgement,
     .words = "How far the deepest door or drawer opens, and 600 mm (24 in, our judgement) to "
              "stand or crouch before it.",
     .ok = "There is room to stand before an open door or drawer.",
     .warn = "Before an open door or drawer there is too little room to stand: {limit_about} are "
             "needed and there are {measured}.",
     .fail = "",
     .unknown = "Nobody has said how much free ground there is; an open door or drawer with "
                "somebody before it takes {limit_about}.",
     .inputs = "room.drawer reach.aisle"},
    {.id = "room.doors_both",
     .title = "Doors on both sides of the aisle",
     .unit = Unit::Length,
     .harm = Harm::Nuisance,
     .measures = "free ground in front of the counter",
     .against = "how far the two open, together",
     .source = "geometry",
     .clause = "",
     .basis = Basis::Computed,
     .words = "A door or drawer of the station and one across the aisle, both open, must not meet.",
     .ok = "Doors and drawers on both sides can be open at once.",
     .warn = "Doors or drawers on both sides of the aisle meet: open together they take "
             "{limit_about} and there are {measured}.",
     .fail = "",
     .unknown = "Nobody has said how wide the aisle is; doors on both sides open at once take "
                "{limit_about}.",
     .inputs = "room.drawer reach.aisle"},
    {.id = "room.wheelchair_turn",
     .title = "Room to turn a wheelchair",
     .unit = Unit::Length,
     .harm = Harm::Burn,
     .measures = "free ground in front of the counter",
     .against = "60 in (1525 mm)",
     .source = "ada2010",
     .clause = "304.3.1, turning space",
     .basis = Basis::SecondHand,
     .words = "A circle of 60 in (1525 mm) turns a wheelchair; knee room under a counter may be "
              "part of it. Made for public buildings, and tight for many chairs.",
     .ok = "A wheelchair can turn in front of the counter.",
     .warn = "",
     .fail = "A wheelchair cannot turn in front of the counter: 60 in (1525 mm) are needed and "
             "there are {measured}. Backing away from a hot oven is no way out.",
     .unknown = "Nobody has said how much free ground there is; a wheelchair turns in "
                "60 in (1525 mm).",
     .inputs = "reach.aisle height.dough_band"},
};

}  // namespace hs::rules
