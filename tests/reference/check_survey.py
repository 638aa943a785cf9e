#!/usr/bin/env python3
"""Recomputes from the raw survey files every number that engine/cook keeps, and compares.

usage: check_survey.py DATA_DIRECTORY      (files as in survey_tables.py; run in the project root)

Prints one line for each group of numbers with the largest difference, and every number that
differs by more than the last digit kept. Exit 0: all agree. Shares no arithmetic with
survey_tables.py, which wrote some of the tables.
"""

import csv
import math
import re
import sys
from pathlib import Path

COOK = Path("engine/cook")
failures = []


def compare(what, kept, computed, allowed):
    difference = abs(kept - computed)
    if difference > allowed:
        failures.append(f"{what}: kept {kept}, computed {computed:.6f}, allowed +-{allowed}")
    return difference


def report(what, differences, unit):
    print(f"{what}: {len(differences)} numbers, largest difference {max(differences):.6f} {unit}")


def mean(values):
    return math.fsum(values) / len(values)


def sd(values):
    middle = mean(values)
    return math.sqrt(math.fsum((v - middle) ** 2 for v in values) / (len(values) - 1))


def least_squares(x, y):
    """slope, intercept, standard error of estimate with n - 2 degrees of freedom."""
    mx, my = mean(x), mean(y)
    sxx = math.fsum((a - mx) ** 2 for a in x)
    slope = math.fsum((a - mx) * (b - my) for a, b in zip(x, y)) / sxx
    intercept = my - slope * mx
    squares = math.fsum((b - slope * a - intercept) ** 2 for a, b in zip(x, y))
    return slope, intercept, math.sqrt(squares / (len(x) - 2))


NUMBER = r"-?\d+(?:\.\d+)?"


def numbers(text):
    return [float(n) for n in re.findall(NUMBER, re.sub(r"//.*", "", text))]


def read_survey(path):
    with open(path, encoding="latin-1", newline="") as file:
        rows = list(csv.reader(file))
    titles = [t.strip().lower() for t in rows[0]]
    def column(name):
        index = titles.index(name)
        return [int(row[index]) for row in rows[1:]]
    return column


def adult_measures(column):
    stature, sitting, acromion = column("stature"), column("sittingheight"), column("acromialheight")
    sit_eye = column("eyeheightsitting")
    return {
        "eye": [h - s + e for h, s, e in zip(stature, sitting, sit_eye)],
        "elbow": [a - l for a, l in zip(acromion, column("acromionradialelength"))],
        "shoulder": acromion,
        "sit_eye": sit_eye,
        "sit_elbow": column("elbowrestheight"),
        "sit_shoulder": [s - (h - a) for h, s, a in zip(stature, sitting, acromion)],
        "arm_to_grip": [u + f for u, f in zip(column("shoulderelbowlength"),
                                              column("forearmcenterofgriplength"))],
        "forearm_hand": column("forearmhandlength"),
        "abdomen": column("abdominalextensiondepthsitting"),
        "buttock_knee": column("buttockkneelength"),
    }


def check_adults(data):
    header = (COOK / "survey.h").read_text()
    cells = [numbers(c) + [float("true" in c)]
             for c in re.findall(r"\{[^{}]*\}", (COOK / "adult_cells.inc").read_text())]
    grip, belly, hip = [], [], []
    for block, name, men in (("kSurveyMen", "MALE", 1.0), ("kSurveyWomen", "FEMALE", 0.0)):
        text = re.search(block + r"\{(.*?)\n\};", header, re.S).group(1)
        column = read_survey(data / f"ANSUR_II_{name}_Public.csv")
        stature, measures = column("stature"), adult_measures(column)
        kept = {k: numbers(v) for k, v in re.findall(r"\.(\w+) = ([^\n]*),\n", text + "\n")}
        basics = {"people": (len(stature), 0), "stature_mean_mm": (mean(stature), 0.005),
                  "stature_sd_mm": (sd(stature), 0.005), "stature_min_mm": (min(stature), 0),
                  "stature_max_mm": (max(stature), 0)}
        if set(kept) != set(basics) | set(measures):
            failures.append(f"{block}: members {sorted(kept)} are not those checked")
            continue
        differences = [compare(f"{block}.{k}", kept[k][0], v, tolerance)
                       for k, (v, tolerance) in basics.items()]
        report(f"{block} stature and counts", differences, "mm")
        differences, lines = [], []
        for key, values in measures.items():
            slope, intercept, see = least_squares(stature, values)
            compare(f"{block}.{key} slope", kept[key][0], slope, 5.01e-6)
            compare(f"{block}.{key} intercept", kept[key][1], intercept, 5.01e-3)
            differences.append(compare(f"{block}.{key} see", kept[key][2], see, 5.01e-3))
            lines += [abs(kept[key][0] * h + kept[key][1] - slope * h - intercept)
                      for h in (min(stature), max(stature))]
        report(f"{block} standard errors", differences, "mm")
        report(f"{block} regression lines, at both ends of the survey", lines, "mm")

        forearm, grips = column("forearmhandlength"), column("forearmcenterofgriplength")
        grip.append(mean(grips) / mean(forearm))
        belly.append(mean([a / h for a, h in zip(measures["abdomen"], stature)]))
        hip.append(mean([t / h for t, h in zip(column("trochanterionheight"), stature)]))

        mine = [c for c in cells if c[5] == men]
        if sum(c[4] for c in mine) != len(stature):
            failures.append(f"adult_cells.inc, {name}: counts do not add up to {len(stature)}")
        differences = [
            compare(f"adult_cells.inc, {name}, mean {k}",
                    math.fsum(c[i] * c[4] for c in mine) / len(stature), mean(values), 0.1)
            for i, (k, values) in enumerate((("stature", stature), ("eye", measures["eye"]),
                                             ("elbow", measures["elbow"]),
                                             ("shoulder", measures["shoulder"])))]
        report(f"adult_cells.inc {name} ({len(mine)} cells) means", differences, "mm")
        check_shares(name, mine, list(zip(measures["eye"], measures["elbow"])))
    one = lambda name: numbers(re.search(name + r" = ([^;]*);", header).group(1))[0]
    report("survey.h single ratios", [
        compare("kGripShareOfForearmHand", one("kGripShareOfForearmHand"), mean(grip), 5.01e-5),
        compare("kAbdomenRatio", one("kAbdomenRatio"), mean(belly), 5.01e-5),
        compare("kHipAboveTrochanterRatio", one("kHipAboveTrochanterRatio"),
                one("kHipRatio") - mean(hip), 5.01e-4)], "of stature")


def check_shares(name, cells, people):
    """Bands of elbow height with a least eye height, over a regular grid of limits."""
    total, worst, summed, tried = len(people), 0.0, 0.0, 0
    for low in range(900, 1101, 20):
        for width in (60, 100, 150, 250):
            for eye in range(1400, 1681, 40):
                holds = lambda e, w: low <= w <= low + width and e >= eye
                raw = sum(holds(e, w) for e, w in people) / total
                kept = sum(c[4] for c in cells if holds(c[1], c[2])) / total
                worst, summed, tried = max(worst, abs(raw - kept)), summed + abs(raw - kept), tried + 1
    print(f"adult_cells.inc {name} shares against the raw survey: {tried} bands, "
          f"largest error {worst:.4f}, mean {summed / tried:.4f}")
    if worst > 0.03:
        failures.append(f"adult_cells.inc, {name}: a share is off by {worst:.4f}")


def check_children(data):
    raw = (data / "snyder1977_child_individuals.csv").read_bytes().decode("latin-1")
    rows = [r for r in csv.reader(raw.split("\r")) if len(r) > 10]
    titles = [t.strip() for t in rows[0]]
    def value(row, title):
        return float(row[titles.index(title)])
    def ratio(row, plus, minus=()):
        if any(value(row, t) <= 0 for t in (*plus, *minus)):
            return None
        return (sum(value(row, t) for t in plus) - sum(value(row, t) for t in minus)) / value(
            row, "STATURE")
    stature, sitting = "STATURE", "ERECT SITTING HEIGHT"
    sternum, eye = "SUPRASTERNALE HEIGHT", "EYE HEIGHT (SEATED)"
    upper_arm = "SHOULDER-ELBOW LENGTH"
    formulas = [
        ((stature, eye), (sitting,)), ((sternum,), ("ACROMION-RADIALE LENGTH",)), ((sternum,), ()),
        ((eye,), ()), ((sitting, sternum), (stature, upper_arm)), ((sitting, sternum), (stature,)),
        (("TROCHANTERIC HEIGHT",), ()), ((upper_arm,), ()), (("ELBOW-HAND LENGTH",), ()),
        (("BUTTOCK-KNEE LENGTH",), ()), (("FOOT LENGTH",), ()),
    ]
    kept = numbers((COOK / "child_ratios.inc").read_text())
    per_row = 2 * (len(formulas) + 1)
    if len(kept) != 16 * per_row:
        failures.append(f"child_ratios.inc holds {len(kept)} numbers, not {16 * per_row}")
        return
    ratios, statures = [], []
    for index, age in enumerate(range(2, 18)):
        bin_ = [r for r in rows[1:] if math.floor(value(r, "AGE IN YEARS") / 1000) == age
                and value(r, stature) > 0]
        line = kept[index * per_row : (index + 1) * per_row]
        for i, (plus, minus) in enumerate(formulas):
            values = [v for v in (ratio(r, plus, minus) for r in bin_) if v is not None]
            what = f"child_ratios.inc, age {age}, column {i}"
            ratios.append(compare(what + " mean", line[2 * i], mean(values), 5.01e-5))
            ratios.append(compare(what + " sd", line[2 * i + 1], sd(values), 5.01e-5))
        heights = [value(r, stature) for r in bin_]
        statures.append(compare(f"age {age} stature", line[-2], mean(heights), 0.0501))
        statures.append(compare(f"age {age} stature sd", line[-1], sd(heights), 0.0501))
    report("child_ratios.inc ratios", ratios, "of stature")
    report("child_ratios.inc stature", statures, "mm")


def check_cdc(data):
    with open(data / "cdc2000_statage.csv", newline="") as file:
        table = {(r["Sex"], float(r["Agemos"])): (float(r["L"]), float(r["M"]), float(r["S"]))
                 for r in csv.DictReader(file)}
    kept = numbers((COOK / "cdc_stature.inc").read_text())
    differences, medians, percentiles = [], [], []
    for s, sex in enumerate(("1", "2")):
        rows = [kept[i + 3 * s : i + 3 * s + 3] for i in range(0, len(kept), 6)]
        for i, (l, m, sigma) in enumerate(rows):
            raw = table[sex, 30.5 + 6 * i]
            what = f"cdc_stature.inc, sex {sex}, month {30.5 + 6 * i}"
            differences += [compare(what + " L", l, raw[0], 5.01e-7),
                            compare(what + " M", m, 10 * raw[1], 5.01e-5),
                            compare(what + " S", sigma, raw[2], 5.01e-9)]
        for month in range(31, 216):
            i, part = divmod(month - 30, 6)
            l, m, sigma = (a + (b - a) * part / 6 for a, b in zip(rows[i], rows[i + 1]))
            raw = table[sex, month + 0.5]
            medians.append(abs(m - 10 * raw[1]))
            for z in (-2.326348, 2.326348):
                x = 10 * raw[1] * (1 + raw[0] * raw[2] * z) ** (1 / raw[0])
                found = ((x / m) ** l - 1) / (l * sigma)
                percentiles.append(50 * abs(math.erf(found / 2**0.5) - math.erf(z / 2**0.5)))
    report("cdc_stature.inc", differences, "(L, S; M in mm)")
    report("CDC medians between the kept half years", medians, "mm")
    report("CDC P1 and P99 between the kept half years", percentiles, "percent")


def main():
    if len(sys.argv) != 2:
        sys.exit(__doc__)
    data = Path(sys.argv[1])
    check_adults(data)
    check_children(data)
    check_cdc(data)
    for failure in failures:
        print("DIFFERS", failure)
    print("all agree" if not failures else f"{len(failures)} differ")
    sys.exit(bool(failures))


if __name__ == "__main__":
    main()
