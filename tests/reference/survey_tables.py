#!/usr/bin/env python3
"""Writes the compact tables of engine/cook from the raw survey files.

usage: survey_tables.py DATA_DIRECTORY OUTPUT_DIRECTORY

DATA_DIRECTORY holds the public-domain files, none of which is kept in this repository:
  ANSUR_II_MALE_Public.csv, ANSUR_II_FEMALE_Public.csv   US Army survey 2012, raw, mm
  snyder1977_child_individuals.csv                       UM-HSRI-77-17, individual records, mm
  cdc2000_statage.csv                                    CDC 2000 stature for age, L, M, S, cm
OUTPUT_DIRECTORY (engine/cook) receives adult_cells.inc, child_ratios.inc, cdc_stature.inc.
check_survey.py verifies them, and the regression lines of survey.h, by its own arithmetic.
"""

import csv
import statistics
import sys
from pathlib import Path

HALVINGS = 7  # 2^7 cells for each sex: keeps shares within 0.03 of the raw survey


def read_adults(path):
    """One (stature, eye, elbow, shoulder) for each person, bare feet, mm.

    The survey has no standing eye or elbow height: eye = stature - sitting height + sitting eye
    height; elbow (radiale) = acromial height - acromion-radiale length.
    """
    with open(path, encoding="latin-1", newline="") as file:
        people = []
        for row in csv.DictReader(file):
            stature, acromion = int(row["stature"]), int(row["acromialheight"])
            eye = stature - int(row["sittingheight"]) + int(row["eyeheightsitting"])
            elbow = acromion - int(row["acromionradialelength"])
            people.append((stature, eye, elbow, acromion))
    return people


def halved(people, times):
    """Cells of nearly equal count, each cut at the median of its wider spread measure.

    Equal counts bound what one cell can add to a share; a regular grid of as many cells puts up to
    five per cent of all people in one cell and errs three times as much.
    """
    if times == 0:
        return [people]
    by = max((0, 2), key=lambda k: statistics.pvariance([p[k] for p in people]))
    ordered = sorted(people, key=lambda p: (p[by], p))
    middle = len(ordered) // 2
    return halved(ordered[:middle], times - 1) + halved(ordered[middle:], times - 1)


def adult_cells(data):
    cells = []
    for name, men in (("MALE", "true"), ("FEMALE", "false")):
        for people in halved(read_adults(data / f"ANSUR_II_{name}_Public.csv"), HALVINGS):
            means = [round(statistics.fmean(p[k] for p in people)) for k in range(4)]
            cells.append((men == "false", *means, len(people), men))
    cells.sort()
    words = ["{%d, %d, %d, %d, %d, %s}," % cell[1:] for cell in cells]
    return [" ".join(words[i : i + 2]) for i in range(0, len(words), 2)]


def read_children(path):
    """Records as dicts of numbers; 0 means not measured. The file's lines end with CR only."""
    text = path.read_bytes().decode("latin-1").replace("\r", "\n")
    lines = [line for line in csv.reader(text.splitlines()) if len(line) > 10]
    columns = {}
    for index, title in enumerate(lines[0]):
        columns.setdefault(title.strip(), index)
    return [{t: float(line[i]) for t, i in columns.items() if 0 < i < 90} for line in lines[1:]]


RATIOS = (  # name, formula, columns that must have been measured
    ("eye", lambda r: r["STATURE"] - r["ERECT SITTING HEIGHT"] + r["EYE HEIGHT (SEATED)"],
     ("ERECT SITTING HEIGHT", "EYE HEIGHT (SEATED)")),
    ("elbow", lambda r: r["SUPRASTERNALE HEIGHT"] - r["ACROMION-RADIALE LENGTH"],
     ("SUPRASTERNALE HEIGHT", "ACROMION-RADIALE LENGTH")),
    ("shoulder", lambda r: r["SUPRASTERNALE HEIGHT"], ("SUPRASTERNALE HEIGHT",)),
    ("sit_eye", lambda r: r["EYE HEIGHT (SEATED)"], ("EYE HEIGHT (SEATED)",)),
    ("sit_elbow", lambda r: r["ERECT SITTING HEIGHT"] - r["STATURE"] + r["SUPRASTERNALE HEIGHT"]
     - r["SHOULDER-ELBOW LENGTH"],
     ("ERECT SITTING HEIGHT", "SUPRASTERNALE HEIGHT", "SHOULDER-ELBOW LENGTH")),
    ("sit_shoulder", lambda r: r["ERECT SITTING HEIGHT"] - r["STATURE"]
     + r["SUPRASTERNALE HEIGHT"], ("ERECT SITTING HEIGHT", "SUPRASTERNALE HEIGHT")),
    ("trochanter", lambda r: r["TROCHANTERIC HEIGHT"], ("TROCHANTERIC HEIGHT",)),
    ("shoulder_elbow", lambda r: r["SHOULDER-ELBOW LENGTH"], ("SHOULDER-ELBOW LENGTH",)),
    ("elbow_hand", lambda r: r["ELBOW-HAND LENGTH"], ("ELBOW-HAND LENGTH",)),
    ("buttock_knee", lambda r: r["BUTTOCK-KNEE LENGTH"], ("BUTTOCK-KNEE LENGTH",)),
    ("foot", lambda r: r["FOOT LENGTH"], ("FOOT LENGTH",)),
)


def child_ratios(data):
    children = read_children(data / "snyder1977_child_individuals.csv")
    names = [name for name, _, _ in RATIOS] + ["stature_mm"]
    lines = ["// {mean, SD} of " + ", ".join(names[:7]) + ",", "// " + ", ".join(names[7:])]
    for year in range(2, 18):
        # A few records of the age-5 and age-6 bins have no stature and give no ratio.
        bin_ = [r for r in children
                if year * 1000 <= r["AGE IN YEARS"] < (year + 1) * 1000 and r["STATURE"] > 0]
        words = []
        for _, formula, needed in RATIOS:
            ratios = [formula(r) / r["STATURE"] for r in bin_ if all(r[c] > 0 for c in needed)]
            words.append("{%.4f, %.4f}" % (statistics.fmean(ratios), statistics.stdev(ratios)))
        statures = [r["STATURE"] for r in bin_]
        words.append("{%.1f, %.1f}" % (statistics.fmean(statures), statistics.stdev(statures)))
        lines.append("{%s,  // age %d" % (", ".join(words[:4]), year))
        lines.append(" %s," % ", ".join(words[4:8]))
        lines.append(" %s}," % ", ".join(words[8:]))
    return lines


def cdc_stature(data):
    with open(data / "cdc2000_statage.csv", newline="") as file:
        rows = {(int(r["Sex"]), float(r["Agemos"])): r for r in csv.DictReader(file)}
    lines = []
    for step in range(32):
        months = 30.5 + 6 * step
        words = ["{%.6f, %.4f, %.8f}" % (float(r["L"]), float(r["M"]) * 10, float(r["S"]))
                 for r in (rows[1, months], rows[2, months])]
        lines.append("{%s},  // %.1f months" % (", ".join(words), months))
    return lines


def write(path, lines):
    head = "// Written by tests/reference/survey_tables.py from the raw survey files; do not edit."
    path.write_text("\n".join([head, *lines]) + "\n")


def main():
    if len(sys.argv) != 3:
        sys.exit(__doc__)
    data, out = Path(sys.argv[1]), Path(sys.argv[2])
    write(out / "adult_cells.inc", adult_cells(data))
    write(out / "child_ratios.inc", child_ratios(data))
    write(out / "cdc_stature.inc", cdc_stature(data))


if __name__ == "__main__":
    main()
