"""Reads one booklet in the order of its structure, as a screen reader does, and holds it against its bookmarks.

    order.py BOOKLET.pdf

The headings that are read must be those of the bookmarks, in their order; steps come by their numbers; and each step
has its words, and its diagram where there is one, before the next heading.
"""

import re
import sys

import pdfplumber
import pikepdf

HEADING = re.compile(r"H[1-6]?")


def texts(path):
    """The letters of each piece of marked content, by page and number (ISO 32000-1, 14.7.4)."""
    found = {}
    with pdfplumber.open(path) as pdf:
        for at, page in enumerate(pdf.pages):
            for char in page.chars:
                if char.get("mcid") is not None:
                    found[at, char["mcid"]] = found.get((at, char["mcid"]), "") + char["text"]
    return found


def read(node, page, pages, told, words):
    """Elements below a node in their order: a heading with its text, a figure, or a paragraph."""
    if isinstance(node, pikepdf.Array):
        for kid in node:
            read(kid, page, pages, told, words)
        return
    # What is marked on the page itself is text of the element above it.
    if not isinstance(node, pikepdf.Dictionary) or node.get("/Type") == "/MCR":
        return
    if "/Pg" in node:
        page = pages[node["/Pg"].objgen]
    sort = str(node.get("/S", ""))[1:]
    own = {"sort": sort, "text": ""}
    if HEADING.fullmatch(sort) or sort in ("P", "Figure", "LBody"):
        told.append(own)
    own["text"] = text(node.get("/K"), page, pages, words)
    for kid in node.get("/K", []) if isinstance(node.get("/K"), pikepdf.Array) else [node.get("/K")]:
        if isinstance(kid, pikepdf.Dictionary):
            read(kid, page, pages, told, words)


def text(node, page, pages, words):
    """All letters below a node."""
    if node is None:
        return ""
    if isinstance(node, pikepdf.Array):
        return "".join(text(kid, page, pages, words) for kid in node)
    if not isinstance(node, pikepdf.Dictionary):
        return words.get((page, int(node)), "")
    if "/Pg" in node:
        page = pages[node["/Pg"].objgen]
    if node.get("/Type") == "/MCR":
        return words.get((page, int(node["/MCID"])), "")
    return text(node.get("/K"), page, pages, words)


def plain(words):
    return re.sub(r"[\s\u00ad]+", "", words)


path = sys.argv[1]
words = texts(path)
told, bookmarks = [], []
with pikepdf.open(path) as pdf:
    pages = {page.obj.objgen: at for at, page in enumerate(pdf.pages)}
    read(pdf.Root.StructTreeRoot.K, 0, pages, told, words)
    with pdf.open_outline() as outline:

        def below(items):
            for item in items:
                bookmarks.append(item.title)
                below(item.children)

        below(outline.root)
headings = [(at, one["text"]) for at, one in enumerate(told) if HEADING.fullmatch(one["sort"])]
faults = []
read_out = [plain(words) for _, words in headings]
at = 0
for title in bookmarks:
    # A heading may say more than its bookmark: a part says which steps it has.
    rest = [n for n in range(at, len(read_out)) if plain(title) in read_out[n]]
    if not rest:
        faults.append(f"the bookmark “{title}” is not read as a heading in its order")
        continue
    at = rest[0] + 1
numbers = [int(found[1]) for found in (re.match(r"(\d+)\D", plain(words)) for _, words in headings) if found]
if numbers != sorted(numbers) or len(numbers) < 3:
    faults.append(f"steps are read in the order {numbers}")
for (start, name), (end, _) in zip(headings, headings[1:]):
    if re.match(r"\d+\D", plain(name)) and not any(one["sort"] in ("P", "Figure", "LBody") for one in told[start + 1 : end]):
        faults.append(f"nothing is read below “{name}”")
print(f"{path}: {len(bookmarks)} bookmarks, {len(headings)} headings, {len(numbers)} steps, {len(told)} elements read")
for fault in faults:
    print(f"  {fault}")
sys.exit(bool(faults))
