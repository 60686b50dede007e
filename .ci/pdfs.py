"""Holds every PDF in a folder against its structure and its paper.

    pdfs.py FOLDER WIDTH HEIGHT     (in points, as the paper is named)

Each file must open, hold no damaged object or stream, be tagged, have a title and a language, and
have every page of the given paper. A newer library than the system's is asked for on purpose: the
older reader takes a whole stream whose last bytes fall on the edge of its buffer for a broken one.
"""

import pathlib
import sys

import pikepdf


def faults(pdf, width, height):
    with pikepdf.open(pdf) as read:
        yield from read.check_pdf_syntax()
        marked = read.Root.get("/MarkInfo", {}).get("/Marked", False)
        if not marked or "/StructTreeRoot" not in read.Root:
            yield "it is not tagged"
        if not str(read.Root.get("/Lang", "")):
            yield "it has no language"
        with read.open_metadata() as told:
            if not told.get("dc:title"):
                yield "it has no title"
        for number, page in enumerate(read.pages, 1):
            box = [float(side) for side in page.mediabox]
            if abs(box[2] - box[0] - width) > 0.05 or abs(box[3] - box[1] - height) > 0.05:
                yield f"page {number} is {box[2] - box[0]} by {box[3] - box[1]} points"


folder, width, height = pathlib.Path(sys.argv[1]), float(sys.argv[2]), float(sys.argv[3])
pdfs = sorted(folder.rglob("*.pdf"))
if not pdfs:
    sys.exit(f"{folder}: no booklet was built")
bad = 0
for pdf in pdfs:
    try:
        found = list(faults(pdf, width, height))
    except pikepdf.PdfError as error:
        found = [f"it cannot be read: {error}"]
    for fault in found:
        print(f"{pdf}: {fault}")
    bad += bool(found)
print(f"{len(pdfs)} PDFs read, {bad} at fault")
sys.exit(bad > 0)
