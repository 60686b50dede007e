"""Pattern sheets measured as they were written, with libraries that are not ours.

    python measure.py PDFS OUTLINES VALUES

PDFS is the folder that `notchbook sheets` wrote, OUTLINES the true outlines that
`cargo test --test sheets` leaves in target/sheets-outlines.json, VALUES what
`notchbook values --format json` says. Prints a table and exits with 1 where anything
is out of its tolerance. Needs pdfplumber, pikepdf and shapely (PyPI), which brings numpy.

Every length is in mm; a point is 1/72 in (ISO 32000-1, 8.3.2.3), an inch 25.4 mm.
"""

import ast
import json
import math
import operator
import re
import sys
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path

import numpy as np
import pdfplumber
import pikepdf
import shapely
from shapely import affinity
from shapely.geometry import LineString, MultiLineString, Point, Polygon, box

POINT = 25.4 / 72
# What a line may be out by, in mm: less than its own breadth.
TOLERANCE = 0.1
# ISO 216; ANSI/ASME Y14.1 (8.5 x 11 in).
# What is thrown on a table is as long as it has to be.
PAPERS = {
    "a4": (210.0, 297.0),
    "letter": (215.9, 279.4),
    "a0": (841.0, 1189.0),
    "projector": (1200.0, None),
}
# How thick each sort of line is drawn, in mm, and its dashes where another sort is as thick; None for any.
FINE = {
    "cut": (0.35, None), "sew": (0.18, None), "gauge": (0.2, None), "joint": (0.15, None), "fold": (0.3, None),
    "dart": (0.28, None), "dot": (0.4, None), "shared": (0.6, None),
}
BROAD = {
    "cut": (1.6, None), "sew": (1.0, (8.0, 6.0)), "gauge": (1.2, ()), "fold": (1.4, None), "dart": (1.2, (8.0, 5.0)),
    "dot": (1.2, ()), "shared": (2.0, None),
}
# Lines of the grid on a table are light grey, and 10 cm apart.
GRID, GRID_STEP = 1.0, 100.0
# What is white at the edge of what no printer prints, in mm.
BEAM_MARGIN = 5.0
# How far the ring of a marked point reaches from it, in mm.
RING = 0.9


class Wrong(Exception):
    """Something is not as it must be."""


class Page:
    """One sheet: its stretches, from its upper left corner, and its words."""

    def __init__(self, page, looks):
        self.looks = looks
        self.grid = []
        self.size = (float(page.width) * POINT, float(page.height) * POINT)
        self.strokes = []  # (thickness, dash, [(x, y), ...])
        for drawn in page.lines + page.rects + page.curves:
            # Letters have a white rim, which is no line of the pattern.
            grey = drawn["stroking_color"]
            grey = grey[0] if isinstance(grey, (tuple, list)) else grey
            if not drawn["stroke"] or grey > 0.9:
                continue
            # A breadth of one unit, here one mm, is what a PDF has without saying so (ISO 32000-1, table 52).
            thick = round(drawn["linewidth"] * POINT, 3) or 1.0
            if grey > 0.6:
                self.grid += [(thick, [(x * POINT, y * POINT) for x, y in run]) for run in runs(drawn["path"])]
                continue
            dash = tuple(drawn["dash"][0]) if drawn["dash"] else ()
            for run in runs(drawn["path"]):
                self.strokes.append((thick, dash, [(x * POINT, y * POINT) for x, y in run]))
        self.words = page.dedupe_chars().extract_text_lines()
        self.text = "\n".join(line["text"] for line in self.words)
        self.letters = [(c["x0"] * POINT, c["x1"] * POINT, c["text"]) for c in page.chars if c["text"].strip()]

    def stretches(self, sort, dash=None):
        """The single straight stretches of one sort of line; none where the paper has no such line."""
        for pattern, run in self.of(sort):
            if dash is None or pattern == dash:
                yield from zip(run, run[1:])

    def of(self, sort):
        thick, dashes = self.looks.get(sort, (math.inf, None))
        for own, pattern, run in self.strokes:
            said = tuple(round(part, 1) for part in pattern)
            if abs(own - thick) < 0.011 and (dashes is None or said == dashes):
                yield pattern, run

    def dashes(self, sort):
        return {pattern for pattern, _ in self.of(sort)}


def runs(path):
    """A path of the page as runs of points; nothing on a sheet may bend."""
    run = []
    for step, *points in path:
        if step == "m":
            if len(run) > 1:
                yield run
            run = [points[0]]
        elif step == "l":
            run.append(points[0])
        elif step == "h":
            run.append(run[0])
        else:
            raise Wrong(f"a path with `{step}`, which is no straight stretch")
    if len(run) > 1:
        yield run


class Measured:
    """What was measured, with the worst of it."""

    def __init__(self):
        self.worst = {}
        self.faults = []

    def near(self, what, found, wanted, tolerance=TOLERANCE):
        self.error(what, abs(found - wanted), f"{found:.3f} mm, not {wanted:.3f}", tolerance)

    def error(self, what, error, words, tolerance=TOLERANCE):
        sort = what.split(":")[0]
        self.worst[sort] = max(self.worst.get(sort, 0.0), error)
        if not error <= tolerance:
            self.faults.append(f"{what}: {words}")

    def must(self, holds, words):
        if not holds:
            self.faults.append(words)


def squares_and_rulers(page, beam, said):
    """The test squares and the rulers of the first sheet; those of a beam are larger, and have no rulers."""
    level, upright = [], []
    for (x0, y0), (x1, y1) in page.stretches("gauge"):
        if abs(y0 - y1) < 0.001:
            level.append((y0, min(x0, x1), max(x0, x1)))
        elif abs(x0 - x1) < 0.001:
            upright.append((x0, min(y0, y1), max(y0, y1)))
    said.must(level and upright, "the first sheet has no gauge")
    # ISO 80000-3: 5 cm; 2 in of 25.4 mm.
    for name, side in (("20 cm", 200.0), ("8 in", 203.2)) if beam else (("5 cm", 50.0), ("2 in", 50.8)):
        found = None
        for y, x0, x1 in level:
            for other, a, b in level:
                if other > y + 1 and abs(x1 - x0 - side) < 0.3 and abs(a - x0) < 0.3 and abs(b - x1) < 0.3:
                    sides = [one for one in upright if abs(one[1] - y) < 0.3 and abs(one[2] - other) < 0.3]
                    sides = [one for one in sides if min(abs(one[0] - x0), abs(one[0] - x1)) < 0.3]
                    if abs(other - y - side) < 1 and len(sides) == 2:
                        found = (x1 - x0, b - a, other - y, sides[0][2] - sides[0][1], abs(sides[0][0] - sides[1][0]))
        said.must(found is not None, f"the square of {name} is not there, or not near its size")
        for length in found or ():
            said.near(f"squares: {name}", length, side)
    for name, whole, part in () if beam else (("10 cm", 100.0, 1.0), ("4 in", 101.6, 25.4 / 8)):
        bases = [line for line in level if abs(line[2] - line[1] - whole) < 0.5]
        said.must(len(bases) == 1, f"{len(bases)} rulers of {name}")
        for y, x0, x1 in bases:
            said.near(f"rulers: {name}", x1 - x0, whole)
            ticks = sorted(x for x, _, foot in upright if abs(foot - y) < 0.01 and x0 - 0.5 < x < x1 + 0.5)
            count = round(whole / part) + 1
            said.must(len(ticks) == count, f"the ruler of {name} has {len(ticks)} marks, not {count}")
            # Each mark from the ruler's start, so that errors cannot hide by adding up.
            for at, x in enumerate(ticks):
                said.near(f"rulers: {name}, mark {at}", x - ticks[0], at * part)


def grid(page, said):
    """The grid of a beam: light lines from edge to edge, each 10 cm from the next, both ways."""
    for axis, name in ((0, "upright"), (1, "level")):
        lines = sorted({round(run[0][axis], 3) for thick, run in page.grid if abs(run[0][axis] - run[-1][axis]) < 0.001})
        said.must(len(lines) > 1, f"the grid has {len(lines)} {name} lines")
        said.must(all(abs(thick - GRID) < 0.011 for thick, _ in page.grid), "the grid has lines of another breadth")
        for at, line in enumerate(lines):
            # Each from the first, so that errors cannot hide by adding up.
            said.near(f"grid: {name}, line {at}", line - lines[0], at * GRID_STEP)


def places(pages, facts, paper, said):
    """How far each sheet is moved to the plan, by the row and the column that its own foot says."""
    if paper == "projector":
        said.must(len(pages) == 1, f"{len(pages)} pages where a beam has one")
        return [(0.0, 0.0)]
    margin, overlap = facts["margin"], facts["overlap"]
    step = tuple(side - 2 * margin - overlap for side in PAPERS[paper])
    found = []
    for at, page in enumerate(pages):
        foot = re.search(r"sheet ([A-Z]+)(\d+): row ([A-Z]+), column (\d+)", page.text)
        count = re.search(r"page (\d+) of (\d+)", page.text)
        said.must(count and (int(count[1]), int(count[2])) == (at + 1, len(pages)), f"page {at + 1} does not say so")
        if foot is None:
            said.must(len(pages) == 1 and "one sheet" in page.text, f"page {at + 1} does not say which sheet it is")
            found.append((0, 0))
            continue
        said.must((foot[1], foot[2]) == (foot[3], foot[4]), f"page {at + 1}: its name and its place differ")
        row = 0
        for letter in foot[1]:
            row = row * 26 + ord(letter) - ord("A") + 1
        found.append((row - 1, int(foot[2]) - 1))
    said.must(len(set(found)) == len(found), "two sheets have one place")
    half = overlap / 2
    moved = []
    for (row, column), page in zip(found, pages):
        # A joint must be where the sheets are moved to, or hands would join them elsewhere.
        for (beside, at, axis) in (
            ((row, column - 1), margin + half, 0),
            ((row, column + 1), page.size[0] - margin - half, 0),
            ((row - 1, column), margin + half, 1),
            ((row + 1, column), page.size[1] - margin - half, 1),
        ):
            joints = [a[axis] for a, b in page.stretches("joint") if abs(a[axis] - b[axis]) < 0.01]
            near = min((abs(joint - at) for joint in joints), default=math.inf)
            if beside in found:
                said.error("joints", near, f"the joint to {beside} is {near:.3f} mm off")
        moved.append((column * step[0] - half - margin, row * step[1] - half - margin))
    return moved


def moved_lines(pages, moved, sort, dash):
    """Each sheet's lines of one sort, at their place on the plan."""
    sheets = []
    for page, (dx, dy) in zip(pages, moved):
        sheets.append([((x0 + dx, y0 + dy), (x1 + dx, y1 + dy)) for (x0, y0), (x1, y1) in page.stretches(sort, dash)])
    return sheets


def windows_of(pages, moved, margin):
    """What each sheet shows, at its place on the plan."""
    shown = []
    for page, (dx, dy) in zip(pages, moved):
        shown.append(box(margin + dx, margin + dy, page.size[0] - margin + dx, page.size[1] - margin + dy))
    return shown


def overlaps(windows, sheets, said, what):
    """Where two sheets show the same strip, their lines lie on each other."""
    for one in range(len(windows)):
        for two in range(one + 1, len(windows)):
            strip = windows[one].intersection(windows[two])
            if strip.area < 1:
                continue
            # Lines that only touch the strip's rim may be beside it by a rounding.
            inner = strip.buffer(-0.05)
            both = [MultiLineString(sheets[at]).intersection(inner) for at in (one, two)]
            if all(part.is_empty for part in both):
                continue
            said.must(not any(part.is_empty for part in both), f"{what}: a line in an overlap is on one sheet alone")
            for part, other in ((both[0], two), (both[1], one)):
                if not part.is_empty and sheets[other]:
                    worst = farthest(part, MultiLineString(sheets[other]))
                    said.error("overlaps", worst, f"{what}: lines in an overlap lie {worst:.3f} mm apart")


def farthest(lines, target):
    """The greatest distance from points all along some lines to others."""
    points = shapely.get_coordinates(shapely.segmentize(lines, 1.0))
    return float(shapely.distance(shapely.points(points), target).max()) if len(points) else 0.0


def own_part(sheets, windows):
    """What each sheet shows that none before it has shown, so that nothing is there twice."""
    seen = Polygon()
    for lines, window in zip(sheets, windows):
        for a, b in lines:
            part = LineString([a, b]).difference(seen)
            for line in getattr(part, "geoms", [part]):
                if line.length > 0:
                    ends = list(line.coords)
                    yield ends[0], ends[-1]
        # A line on the very rim of a window belongs to that window.
        seen = seen.union(window.buffer(0.0005, join_style="mitre"))


def rings(parts, folds, said, what):
    """Stretches chained end to end into closed lines; the widest gap bridged is an error measured. What is cut on
    the fold is open there: it is closed where a line of the fold is drawn."""
    parts = [part for part in parts if math.dist(*part) > 1e-6]
    grid = {}

    def cells(point):
        x, y = int(point[0] // 1), int(point[1] // 1)
        return [(x + i, y + j) for i in (-1, 0, 1) for j in (-1, 0, 1)]

    for at, part in enumerate(parts):
        for end in (0, 1):
            grid.setdefault((int(part[end][0] // 1), int(part[end][1] // 1)), []).append((at, end))
    free = set(range(len(parts)))
    made = []
    while free:
        first = min(free)
        free.discard(first)
        line = list(parts[first])
        turned = False
        while True:
            tip = line[-1]
            near = [
                (math.dist(tip, parts[at][end]), at, end)
                for cell in cells(tip)
                for at, end in grid.get(cell, ())
                if at in free
            ]
            home = math.dist(tip, line[0]) if len(line) > 2 else math.inf
            best = min(near, default=(math.inf, 0, 0))
            if home <= min(best[0], TOLERANCE):
                said.error("joined", home, f"{what}: a gap of {home:.3f} mm")
                break
            if best[0] > 0.5 and not turned:
                # The other end may go on.
                line.reverse()
                turned = True
                continue
            if best[0] > 0.5 and on_fold(line[0], tip, folds):
                break
            if best[0] > 0.5:
                said.must(False, f"{what}: a line ends at {tip[0]:.2f}, {tip[1]:.2f} and nothing goes on")
                break
            said.error("joined", best[0], f"{what}: a gap of {best[0]:.3f} mm at {tip[0]:.2f}, {tip[1]:.2f}")
            free.discard(best[1])
            line.append(parts[best[1]][1 - best[2]])
        if len(line) > 3:
            made.append(line[:-1] if math.dist(line[0], line[-1]) < TOLERANCE else line)
    return made


def on_fold(start, end, folds):
    """Whether a line of a fold leads from one point to the other."""
    if folds.is_empty or math.dist(start, end) < 1:
        return False
    # The line is dashed on paper and whole in the file; sheets cut it.
    return farthest(LineString([start, end]), folds) < TOLERANCE


def corners(ring):
    """A ring without the points in the middle of straight lines."""
    return Polygon(ring).simplify(0.003).exterior


def fit(ring, true):
    """How a true outline lies where a ring was drawn: (error, quarter turned, moved by)."""
    best = (math.inf, False, (0.0, 0.0))
    drawn = LineString(ring + ring[:1])
    for turned in (False, True):
        # A quarter clockwise as seen, y downwards: (x, y) goes to (-y, x).
        shape = LineString([(-y, x) if turned else (x, y) for x, y in true + true[:1]])
        dx = drawn.bounds[0] - shape.bounds[0]
        dy = drawn.bounds[1] - shape.bounds[1]
        size = max(
            abs((drawn.bounds[2] - drawn.bounds[0]) - (shape.bounds[2] - shape.bounds[0])),
            abs((drawn.bounds[3] - drawn.bounds[1]) - (shape.bounds[3] - shape.bounds[1])),
        )
        if size > 3:
            continue
        shape = affinity.translate(shape, dx, dy)
        error = max(farthest(drawn, shape), farthest(shape, drawn))
        if error < best[0]:
            best = (error, turned, (dx, dy))
    return best


def bends(ring, point):
    """Whether a ring turns by more than a degree at one of its points."""
    at = min(range(len(ring)), key=lambda at: math.dist(ring[at], point))
    (ax, ay), (bx, by), (cx, cy) = ring[at - 1], ring[at], ring[(at + 1) % len(ring)]
    turn = math.atan2(cy - by, cx - bx) - math.atan2(by - ay, bx - ax)
    return abs(math.remainder(turn, math.tau)) > math.radians(1)


def along(ring, ends):
    """The two lengths along a ring between its corners nearest to two points: (point, is a corner).

    Where the true outline runs on without a corner, as a curve does into the straight end of the
    next edge's allowance, there is none to look for on paper: the nearest place of the line counts.
    """
    line = corners(ring)
    kept = list(line.coords)[:-1]
    near, off = [], 0.0
    for point, bent in ends:
        if bent:
            found = min(kept, key=lambda corner: math.dist(corner, point))
        else:
            found = line.interpolate(line.project(Point(point))).coords[0]
        off = max(off, math.dist(found, point))
        near.append(line.project(Point(found)))
    one, two = near
    return (abs(one - two), line.length - abs(one - two)), off


def pieces_of(windows, sheets, folds, true, said, what):
    """Every piece of one size: its outline whole, at its true size, each edge as long as it must be."""
    drawn = rings(own_part(sheets, windows), folds, said, what)
    said.must(len(drawn) == len(true), f"{what}: {len(drawn)} outlines drawn of {len(true)} pieces")
    lies = {}
    left = list(range(len(drawn)))
    # The pieces that fit best first, so that two of nearly one size cannot be taken for each other.
    pairs = sorted((fit(drawn[at], piece["cutting"]) + (at, piece["id"]) for at in left for piece in true), key=lambda one: one[0])
    for error, turned, by, at, name in pairs:
        if at in left and name not in lies and error < math.inf:
            left.remove(at)
            lies[name] = (turned, by, drawn[at])
            said.error("outlines", error, f"{what}, {name}: the joined outline is {error:.3f} mm off")
    for piece in true:
        if piece["id"] not in lies:
            said.must(False, f"{what}, {piece['id']}: no joined outline is like it")
            continue
        turned, (dx, dy), ring = lies[piece["id"]]

        def place(point):
            x, y = (-point[1], point[0]) if turned else point
            return x + dx, y + dy

        for edge in piece["edges"]:
            ends = [(place(point), bends(piece["cutting"], point)) for point in (edge["cut"][0], edge["cut"][-1])]
            lengths, off = along(ring, ends)
            length = min(lengths, key=lambda one: abs(one - edge["length"]))
            name = f"{what}, {piece['id']}.{edge['name']}"
            said.near(f"edges: {name}", length, edge["length"])
            said.error(f"edges: {name}, corner", off, f"the nearest corner is {off:.3f} mm off")
    return lies


def rectangle_of(piece, values):
    """The corners of a rectangle worked out from the booklet's own values: (outline, sizes)."""

    def value(formula):
        try:
            return reckoned(ast.parse(formula, mode="eval").body)
        except SyntaxError as fault:
            raise Wrong(f"{piece['id']}: `{formula}` is no sum of measurements") from fault

    def reckoned(part):
        sums = {ast.Add: operator.add, ast.Sub: operator.sub, ast.Mult: operator.mul, ast.Div: operator.truediv}
        match part:
            case ast.Name(id=name) if name in values:
                return values[name]
            case ast.Constant(value=int() | float() as number):
                return number
            case ast.BinOp(left=one, op=op, right=other) if type(op) in sums:
                return sums[type(op)](reckoned(one), reckoned(other))
        raise Wrong(f"{piece['id']}: `{ast.unparse(part)}` is no measurement: teach this script to work it out")

    rect = piece["rectangle"]
    wide, high = value(rect["width"]), value(rect["height"])
    cut = {"bottom": (0.0, 0.0), "top": (0.0, 0.0)}
    for side, across, up in rect["corners_out"]:
        cut[side] = (value(across), value(up))
    (tx, ty), (bx, by) = cut["top"], cut["bottom"]
    outline = [
        (tx, 0), (wide - tx, 0), (wide - tx, ty), (wide, ty), (wide, high - by), (wide - bx, high - by),
        (wide - bx, high), (bx, high), (bx, high - by), (0, high - by), (0, ty), (tx, ty),
    ]
    kept = [point for at, point in enumerate(outline) if point != outline[at - 1]]
    return [(float(x), float(y)) for x, y in kept]


def stitching(pages, windows, moved, true, lies, said, what):
    """The line to sew along, where there is one, lies in its piece as it must."""
    sheets = moved_lines(pages, moved, "sew", None)
    overlaps(windows, sheets, said, what)
    drawn = MultiLineString(list(own_part(sheets, windows)))
    wanted = []
    for piece in true:
        if piece["stitching"] is None or piece["id"] not in lies:
            continue
        turned, (dx, dy), _ = lies[piece["id"]]
        points = [(-y, x) if turned else (x, y) for x, y in piece["stitching"]]
        line = LineString([(x + dx, y + dy) for x, y in points + points[:1]])
        if piece["fold"]:
            fold = LineString([((-y, x) if turned else (x, y)) for x, y in piece["fold"]])
            line = line.difference(affinity.translate(fold, dx, dy).buffer(0.01, cap_style="flat"))
        wanted += getattr(line, "geoms", [line])
    wanted = MultiLineString([part for part in wanted if part.length > 0])
    said.must(drawn.is_empty == wanted.is_empty, f"{what}: stitching lines are missing, or there are too many")
    if not drawn.is_empty and not wanted.is_empty:
        error = max(farthest(drawn, wanted), farthest(wanted, drawn))
        said.error("stitching", error, f"{what}: a stitching line is {error:.3f} mm off")
        short = abs(drawn.length - wanted.length)
        said.must(short < 0.5, f"{what}: {drawn.length:.2f} mm of stitching lines, not {wanted.length:.2f}")


def inside(pages, windows, moved, true, lies, said, what):
    """Legs of darts and lines of tucks lie where they must, and so do points and marks."""
    sheets = moved_lines(pages, moved, "dart", None)
    drawn = list(own_part(sheets, windows))
    crosses = [
        ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
        for a, b in own_part(moved_lines(pages, moved, "dot", None), windows)
        if abs(math.dist(a, b) - 2 * RING) < TOLERANCE
    ]
    wanted, dots = [], []
    for piece in true:
        if piece["id"] not in lies:
            continue
        turned, (dx, dy), _ = lies[piece["id"]]

        def place(point):
            x, y = (-point[1], point[0]) if turned else point
            return x + dx, y + dy

        wanted += [[place(end) for end in line] for line in piece["sewn"]]
        dots += [(piece["id"], place(point)) for point in piece["dots"]]
    said.must(bool(drawn) == bool(wanted), f"{what}: darts are missing, or there are too many")
    if drawn and wanted:
        one, two = MultiLineString(drawn), MultiLineString(wanted)
        error = max(farthest(one, two), farthest(two, one))
        said.error("darts", error, f"{what}: a leg lies {error:.3f} mm off")
    for name, point in dots:
        error = min((math.dist(point, cross) for cross in crosses), default=math.inf)
        said.error("dots", error, f"{what}, {name}: a point is marked {error:.3f} mm off")


def measure(path, facts, size, paper, values):
    """One PDF against the true outlines; gives the number of pages and what was measured."""
    said = Measured()
    with pikepdf.open(path) as pdf:
        wishes = pdf.Root.get("/ViewerPreferences", {})
        said.must(wishes.get("/PrintScaling") == "/None", "printers may scale it")
        for page in pdf.pages:
            said.must("/UserUnit" not in page and int(page.get("/Rotate", 0)) == 0, "a page has units of its own, or is turned")
            for name in ("/MediaBox", "/CropBox"):
                x0, y0, x1, y1 = (float(side) * POINT for side in page.get(name, page.mediabox))
                for found, wanted in zip((x1 - x0, y1 - y0), PAPERS[paper]):
                    # What is as long as it has to be is shorter than readers open (14 400 points, ISO 32000-1, annex C).
                    said.must(wanted or found <= 14400 * POINT, f"a page is {found:.0f} mm long")
                    said.near(f"paper: {name}", found, wanted or found, 0.01)
    with pdfplumber.open(path) as pdf:
        pages = [Page(page, BROAD if paper == "projector" else FINE) for page in pdf.pages]
    beam = paper == "projector"
    squares_and_rulers(pages[0], beam, said)
    if beam:
        grid(pages[0], said)
    margin = BEAM_MARGIN if beam else facts["margin"]
    for at, page in enumerate(pages):
        said.must(at == 0 or not list(page.stretches("gauge")), f"page {at + 1} has a gauge too")
        out = [text for x0, x1, text in page.letters if x0 < margin - 0.3 or x1 > page.size[0] - margin + 0.3]
        said.must(not out, f"page {at + 1}: letters beyond the margin: {''.join(out)}")
        ends = [point for _, _, run in page.strokes for point in run]
        over = max(max(margin - x, x - page.size[0] + margin, margin - y, y - page.size[1] + margin) for x, y in ends)
        said.error("margin", max(over, 0.0), f"page {at + 1}: a line reaches {over:.3f} mm into the margin", 0.01)
    moved = places(pages, facts, paper, said)
    windows = windows_of(pages, moved, margin)
    if isinstance(size, list):
        nested(pages, windows, moved, facts, size, said)
        return len(pages), said
    true = facts["sizes"][size]
    sheets = moved_lines(pages, moved, "cut", ())
    overlaps(windows, sheets, said, size)
    folds = fold_lines(pages, moved)
    lies = pieces_of(windows, sheets, folds, true, said, size)
    for piece in true:
        if piece["rectangle"] is not None and piece["id"] in lies:
            error, _, _ = fit(lies[piece["id"]][2], rectangle_of(piece, values))
            said.error("reckoned", error, f"{piece['id']}: {error:.3f} mm off the rectangle of the booklet's own values")
    stitching(pages, windows, moved, true, lies, said, size)
    inside(pages, windows, moved, true, lies, said, size)
    return len(pages), said


def fold_lines(pages, moved):
    """Every line that lies on the fold of the cloth."""
    return MultiLineString([line for sheet in moved_lines(pages, moved, "fold", None) for line in sheet])


def families(facts, sizes):
    """The pieces that each line pattern of a nest stands for: those of the first size of each thing, of the second,
    and so on. What is equal in the sizes of several things is drawn once, with the first pattern's whole lines."""
    views = [[size for size in view["sizes"] if size in sizes] for view in facts["views"]]
    views = [view for view in views if view]
    once, groups = {}, {}
    for piece_id in {piece["id"] for size in sizes for piece in facts["sizes"][size]}:
        found = {size: piece for size in sizes for piece in facts["sizes"][size] if piece["id"] == piece_id}
        one = next(iter(found.values()))
        several = sum(any(size in found for size in view) for view in views) > 1
        if several and all(piece == one for piece in found.values()):
            once[piece_id] = one
    for view in views:
        for at, size in enumerate(view):
            own = [piece | {"id": f"{size}: {piece['id']}"} for piece in facts["sizes"][size] if piece["id"] not in once]
            groups.setdefault(at, []).extend(own)
    groups.setdefault(0, []).extend(once.values())
    return groups


def nested(pages, windows, moved, facts, sizes, said):
    """Sizes over one another: each line pattern is one whole size, or one of each thing, with the lines that several
    sizes share, which are drawn once."""
    patterns = sorted(set().union(*(page.dashes("cut") for page in pages)))
    families_left = families(facts, sizes)
    said.must(len(patterns) == len(families_left), f"{len(patterns)} line patterns for {len(families_left)} sizes of one thing")
    sheets = moved_lines(pages, moved, "shared", None)
    overlaps(windows, sheets, said, "shared")
    shared = list(own_part(sheets, windows))
    laid = []
    for pattern in patterns:
        sheets = moved_lines(pages, moved, "cut", pattern)
        overlaps(windows, sheets, said, f"nested {pattern}")
        own = list(own_part(sheets, windows))
        ends = ends_of(own)
        if not families_left or not own:
            continue
        # The size whose corners lie best on the ends of these lines.
        votes = {at: sum(spots(piece, ends)[0][0] for piece in true) for at, true in families_left.items()}
        at = max(votes, key=votes.get)
        laid.append(lay(families_left.pop(at), own, shared, said, f"nested {at + 1}"))
    for line in shared:
        of = sum(farthest(LineString(line), outlines) < TOLERANCE for outlines in laid if not outlines.is_empty)
        said.must(of > 1, f"a shared line from {line[0]} to {line[1]} is of {of} sizes")


def ends_of(lines):
    """Where lines begin and end: a corner twice, since it has most to say of where a piece lies."""
    return np.array([end for line in lines for end in line]).reshape(-1, 2)


def turned_by(points, turned):
    return [(-y, x) if turned else (x, y) for x, y in points]


def spots(piece, ends):
    """Where a piece may lie: (how many of its corners meet ends of drawn lines, quarter turned, moved by), best first."""
    found = []
    for turned in (False, True):
        kept = np.array(corners(turned_by(piece["cutting"], turned)).coords[:-1])
        by = (ends[:, None, :] - kept[None, :, :]).reshape(-1, 2)
        # One number for each square of 0.2 mm: numbers are sorted much sooner than pairs.
        rough = np.round(by / 0.2).astype(np.int64)
        cells, which, count = np.unique(rough[:, 0] * 1_000_003 + rough[:, 1], return_inverse=True, return_counts=True)
        for cell in np.argsort(-count)[:8]:
            move = np.median(by[which == cell], axis=0)
            found.append((int(count[cell]), turned, (float(move[0]), float(move[1]))))
    return sorted(found, key=lambda one: -one[0])


def lay(true, own, shared, said, what):
    """Lays the pieces of one size on the lines drawn for it; gives their outlines where they lie."""
    drawn = MultiLineString(own + shared)
    ends = ends_of(own + shared)
    taken, outlines = [], []
    for piece in sorted(true, key=lambda piece: -Polygon(piece["cutting"]).area):
        best = (math.inf, None, None)
        for _, turned, (dx, dy) in spots(piece, ends):
            points = turned_by(piece["cutting"], turned)
            outline = affinity.translate(LineString(points + points[:1]), dx, dy)
            room = box(*outline.bounds)
            if any(room.intersection(other).area > 1 for other in taken):
                continue
            if piece["fold"]:
                fold = affinity.translate(LineString(turned_by(piece["fold"], turned)), dx, dy)
                outline = outline.difference(fold.buffer(0.01, cap_style="flat"))
            rough = shapely.points(shapely.get_coordinates(outline)[::7])
            if float(shapely.distance(rough, drawn).max()) > 1:
                continue
            error = farthest(outline, drawn)
            best = min(best, (error, room, outline), key=lambda one: one[0])
        if best[1] is None:
            said.must(False, f"{what}, {piece['id']}: nothing drawn is like it")
            continue
        taken.append(best[1])
        outlines.append(best[2])
        said.error("outlines", best[0], f"{what}, {piece['id']}: {best[0]:.3f} mm of its outline are not drawn")
    whole = shapely.union_all(outlines) if outlines else MultiLineString()
    if outlines:
        off = farthest(MultiLineString(own), whole)
        said.error("outlines", off, f"{what}: a line lies {off:.3f} mm off every piece of its size")
    return whole


def millimetres(exact):
    """`210 mm` or `62 1/2 mm` as a number; None for what is no length."""
    match = re.fullmatch(r"(-?[\d.]+)?\s*(?:(\d+)/(\d+))?\s*mm", exact)
    if not match or (match[1] is None and match[2] is None):
        return None
    return float(match[1] or 0) + (int(match[2]) / int(match[3]) if match[2] else 0.0)


def attempt(job):
    """One PDF, and what stops the measuring of it as a fault like others."""
    try:
        return measure(*job)
    except (Wrong, OSError, KeyError, ValueError) as wrong:
        said = Measured()
        said.faults.append(f"it cannot be measured: {wrong!r}")
        return 0, said


def sets(facts):
    """What is printed of a booklet, by its name in the file's: one size, or a list of sizes that are nested."""
    sizes = list(facts["sizes"])
    yield from ((size, size) for size in sizes)
    if facts["of_views"]:
        yield from ((view["name"], view["sizes"]) for view in facts["views"] if len(view["sizes"]) > 1)
    if len(sizes) > 1:
        yield "nested", sizes


def main():
    folder, outlines, listed = sys.argv[1:4]
    booklets = json.loads(Path(outlines).read_text(encoding="utf-8"))
    values = {}
    for line in Path(listed).read_text(encoding="utf-8").splitlines():
        row = json.loads(line)
        length = millimetres(row["exact"])
        if length is not None:
            values.setdefault((row["booklet"], row["size"]), {})[row["name"]] = length
    sorts = ["squares", "rulers", "grid", "paper", "margin", "joints", "overlaps", "joined", "outlines", "edges", "reckoned", "stitching", "darts", "dots"]
    print(f"{'worst error, mm':54}{'pages':>6}" + "".join(f"{sort:>10}" for sort in sorts))
    jobs = []
    for name, facts in sorted(booklets.items()):
        for size, of in sets(facts):
            for paper in PAPERS:
                path = Path(folder) / name / "sheets" / f"{name}-{size}-sheets-{paper}.pdf"
                jobs.append((path, facts, of, paper, values.get((name, size), {})))
    faults, worst, measured = [], {}, 0
    with ProcessPoolExecutor() as pool:
        for (path, *_), (pages, said) in zip(jobs, pool.map(attempt, jobs)):
            faults += [f"{path.name}: {fault}" for fault in said.faults]
            if not pages:
                continue
            measured += 1
            cells = "".join(f"{said.worst[sort]:>10.3f}" if sort in said.worst else f"{'':>10}" for sort in sorts)
            print(f"{path.stem:54}{pages:>6}{cells}", flush=True)
            for sort, error in said.worst.items():
                worst[sort] = max(worst.get(sort, 0.0), error)
    print(f"{f'the worst of {measured} PDFs':60}" + "".join(f"{worst.get(sort, 0.0):>10.3f}" for sort in sorts))
    for fault in faults:
        print(fault)
    return 1 if faults or not measured or measured < len(jobs) else 0


if __name__ == "__main__":
    sys.exit(main())
