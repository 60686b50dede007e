"""Reckons reference.csv: random outlines with their length, their area and the areas after an
allowance outwards and inwards.

Run it as `python make.py > reference.csv`; `python make.py --check reference.csv` compares. It needs
svgpathtools (lengths, by adaptive quadrature along each run; recorded with 1.8.0) and Shapely over
GEOS (areas, by its buffer and its unions, with mitred corners and a mitre limit of 4; recorded with
2.2.0). The seed is fixed, so that the outlines are the same on every run; reckoned figures may
differ in their last places from one version to the next. It takes two minutes or so.
"""

import csv
import math
import random
import sys

from shapely import Polygon, difference, make_valid, union, union_all
from svgpathtools import Arc, CubicBezier, Line, parse_path

SEED = 20240611
EACH = 140
# Curves are followed with chords that leave them by no more than this, in mm. Over an outline of
# 1000 mm the error of the area is under 0.1 mm2.
SAGITTA = 1e-4
MITRE_LIMIT = 4.0
# Strips reach behind the outline by this share of the allowance, and meet on a grid of this many mm,
# so that no crack is left between shapes that only touch.
BEHIND = 1e-3
GRID = 1e-6
FIELDS = ["name", "path", "allowance", "length", "area", "out_parts", "out_area", "in_parts", "in_area"]


def figure(value):
    return f"{value:.2f}".rstrip("0").rstrip(".")


def point(at):
    return f"{figure(at[0])} {figure(at[1])}"


def corners(rng, count, wild):
    """Corners round a middle, so that straight lines between them never cross."""
    size = rng.uniform(40, 400)
    flat = rng.uniform(0.5, 1.6)
    turn = rng.uniform(0, math.tau)
    found = []
    for k in range(count):
        angle = turn + math.tau * (k + rng.uniform(-0.3, 0.3)) / count
        reach = size * rng.uniform(1 - wild, 1 + wild)
        found.append((round(reach * math.cos(angle), 2), round(flat * reach * math.sin(angle), 2)))
    if rng.random() < 0.5:
        found.reverse()
    return found


def straight(rng):
    found = corners(rng, rng.randint(3, 9), 0.45)
    return f"M {point(found[0])} " + " ".join(f"L {point(at)}" for at in found[1:]) + " Z"


def cubic(rng):
    found = corners(rng, rng.randint(3, 7), 0.25)
    words = [f"M {point(found[0])}"]
    for here, there in zip(found, found[1:] + found[:1]):
        across = (there[0] - here[0], there[1] - here[1])
        size = math.hypot(*across)
        side = (-across[1], across[0])
        if rng.random() < 0.3:
            words.append(f"L {point(there)}")
            continue
        controls = []
        for share in (rng.uniform(0.2, 0.45), rng.uniform(0.55, 0.8)):
            bulge = rng.uniform(-0.3, 0.3)
            controls.append(tuple(here[i] + across[i] * share + side[i] * bulge for i in (0, 1)))
        assert size > 0
        words.append(f"C {point(controls[0])} {point(controls[1])} {point(there)}")
    return " ".join(words) + " Z"


def arcs(rng):
    found = corners(rng, rng.randint(3, 7), 0.25)
    words = [f"M {point(found[0])}"]
    for here, there in zip(found, found[1:] + found[:1]):
        size = math.dist(here, there)
        if rng.random() < 0.4:
            words.append(f"L {point(there)}")
            continue
        radius = figure(size * rng.uniform(0.62, 2.5))
        words.append(f"A {radius} {radius} 0 0 {rng.randint(0, 1)} {point(there)}")
    return " ".join(words) + " Z"


def samples(run):
    if isinstance(run, Line):
        return 1
    if isinstance(run, Arc):
        sweep = math.radians(abs(run.delta))
        return max(2, math.ceil(sweep / math.sqrt(8 * SAGITTA / abs(run.radius.real))))
    assert isinstance(run, CubicBezier)
    bend = max(abs(run.start - 2 * run.control1 + run.control2), abs(run.control1 - 2 * run.control2 + run.end))
    return max(2, math.ceil(math.sqrt(0.75 * bend / SAGITTA)))


def polygon(path):
    found = []
    for run in path:
        count = samples(run)
        found += [run.point(k / count) for k in range(count)]
    return Polygon([(at.real, at.imag) for at in found])


def moved(path, shape, width, sign):
    """The shape after an allowance outwards (sign 1) or inwards (sign -1).

    Straight outlines go through the buffer of GEOS. For curves that buffer straightens hollows of
    up to a hundredth of the allowance, so they are put together from strips: one along every chord
    and one at every corner, added to the shape or taken from it.
    """
    if all(isinstance(run, Line) for run in path):
        return shape.buffer(sign * width, join_style="mitre", mitre_limit=MITRE_LIMIT)
    way = sign * width
    if sum(a[0] * b[1] - a[1] * b[0] for a, b in zip(shape.exterior.coords, shape.exterior.coords[1:])) < 0:
        way = -way
    strips = []
    for before, run in zip(path[-1:] + path[:-1], path):
        count = samples(run)
        marks = [(plain(run.point(k / count)), out(run, k / count, way)) for k in range(count + 1)]
        for (a, over), (b, beyond) in zip(marks, marks[1:]):
            strips.append([add(a, over, -BEHIND), add(b, beyond, -BEHIND), add(b, beyond), add(a, over)])
        at, first = marks[0]
        last = out(before, 1, way)
        if way * (last[0] * first[1] - last[1] * first[0]) > 0:
            strips.append([at, add(at, last), *tip(at, last, first, width), add(at, first)])
    strips = union_all([make_valid(Polygon(strip)) for strip in strips], grid_size=GRID)
    return (union if sign > 0 else difference)(shape, strips, grid_size=GRID)


def plain(at):
    return (at.real, at.imag)


def out(run, share, way):
    """From the run at this share of it, at a right angle, to the line after the allowance."""
    along = run.unit_tangent(share)
    return (way * along.imag, -way * along.real)


def add(a, b, times=1):
    return (a[0] + times * b[0], a[1] + times * b[1])


def tip(at, before, out, width):
    """The mitre over a corner, or the two ends of the line that squares it off."""
    middle = add(before, out)
    size = math.hypot(*middle)
    cosine = size / 2 / width
    along = (middle[0] / size, middle[1] / size)
    if 1 / cosine <= MITRE_LIMIT:
        return [add(at, (along[0] * width / cosine, along[1] * width / cosine))]
    reach = MITRE_LIMIT * width
    half = (width / cosine - reach) * cosine / math.sqrt(1 - cosine * cosine)
    side = (-along[1] * half, along[0] * half)
    if side[0] * before[0] + side[1] * before[1] < 0:
        side = (-side[0], -side[1])
    end = add(at, (along[0] * reach, along[1] * reach))
    return [add(end, side), add(end, (-side[0], -side[1]))]


def parts(shape):
    """How many separate pieces and holes there are, scraps left out, and the area of them all."""
    pieces = [one for one in getattr(shape, "geoms", [shape]) if one.area > 0.01]
    holes = sum(Polygon(ring).area > 0.01 for one in pieces for ring in one.interiors)
    return len(pieces) + holes, sum(one.area for one in pieces)


def reckon():
    rng = random.Random(SEED)
    rows = []
    for kind, make in (("straight", straight), ("cubic", cubic), ("arcs", arcs)):
        made = 0
        while made < EACH:
            data = make(rng)
            width = rng.choice([2.5, 5, 6, 7, 10, 12.5, 15, 20, 30])
            path = parse_path(data)
            shape = polygon(path)
            # Outlines that cross or nearly touch themselves are faults, not measurements.
            if not shape.is_valid or not shape.buffer(-0.5).geom_type == "Polygon":
                continue
            made += 1
            row = {
                "name": f"{kind}-{made}",
                "path": data,
                "allowance": figure(width),
                "length": f"{path.length(error=1e-9):.5f}",
                "area": f"{shape.area:.4f}",
            }
            for way, sign in (("out", 1), ("in", -1)):
                count, area = parts(moved(path, shape, width, sign))
                row[f"{way}_parts"] = count
                row[f"{way}_area"] = f"{area:.4f}"
            rows.append(row)
    return rows


def differences(rows, recorded):
    """Where freshly reckoned rows and recorded ones disagree; areas to a part in a million."""
    found = [] if len(rows) == len(recorded) else [f"{len(rows)} rows, {len(recorded)} recorded"]
    for row, old in zip(rows, recorded):
        for field in FIELDS:
            new = str(row[field])
            number = field == "length" or field.endswith("area")
            same = abs(float(new) - float(old[field])) <= 1e-3 + 1e-6 * float(new) if number else new == old[field]
            if not same:
                found.append(f"{row['name']}, {field}: {new}, recorded {old[field]}")
    return found


def main():
    rows = reckon()
    if sys.argv[1:2] == ["--check"]:
        with open(sys.argv[2], encoding="utf-8") as file:
            found = differences(rows, list(csv.DictReader(file)))
        print("\n".join(found) or f"{len(rows)} rows agree")
        return 1 if found else 0
    writer = csv.DictWriter(sys.stdout, FIELDS, lineterminator="\n")
    writer.writeheader()
    writer.writerows(rows)
    return 0


if __name__ == "__main__":
    sys.exit(main())
