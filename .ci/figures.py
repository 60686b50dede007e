"""The figures of each page for a screen, held against those of the PDF of the same size: `figures.py OUT`.

Both are read as what they are, by other means than they were made by: the page as HTML with the drawings that it holds as SVG,
the PDF through poppler's pdftotext. A figure is a number with a unit behind it. Each PDF of one size must hold every figure
that the page shows when that size is chosen, and the page every figure of the PDF."""

import html.parser
import pathlib
import re
import subprocess
import sys
import urllib.parse
import xml.etree.ElementTree as ElementTree

VOID = {"meta", "img", "input", "br", "hr", "link"}
SIGNS = {"½": "1/2", "¼": "1/4", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8", "⅓": "1/3", "⅔": "2/3"}
FIGURE = re.compile(r"(?<![\d.,/])(\d+(?:\.\d+)?(?: \d+/\d+)?|\d+/\d+) (mm|cm|m|in|yd|g|kg|oz|°C|°F)(?![A-Za-z²³])")


def plain(text):
    """All spaces alike, fractions as two numbers with a stroke."""
    for sign, parts in SIGNS.items():
        text = re.sub(rf"\s*{sign}", f" {parts}", text)
    return re.sub(r"\s+", " ", text.replace("\u2044", "/"))


def figures(text):
    # The PDF's thin space before a fraction is none to pdftotext, so spaces inside numbers are left out on both sides.
    found = {f"{number.replace(' ', '')} {unit}" for number, unit in FIGURE.findall(plain(text))}
    # `33 × 26.6 cm` leaves the first unit to the second.
    number = r"(?:\d+(?:\.\d+)?(?: \d+/\d+)?|\d+/\d+)"
    for first, unit in re.findall(rf"({number}) × {number} (cm|mm|m|in)", plain(text)):
        found.add(f"{first.replace(' ', '')} {unit}")
    return found


class Page(html.parser.HTMLParser):
    """What is read when one size is chosen."""

    def __init__(self, size):
        super().__init__()
        self.size, self.hidden, self.raw, self.words = size, 0, False, []

    def handle_starttag(self, tag, attrs):
        attrs = dict(attrs)
        own = attrs.get("data-for")
        if self.hidden or (own and self.size not in own.split()):
            self.hidden += tag not in VOID
            return
        self.raw = tag in ("style", "script", "option")
        if tag not in ("span", "b", "strong", "em", "a", "sup", "sub", "i"):
            self.words.append(" ")
        self.words.append(" " + attrs.get("alt", "") + " " if tag == "img" else "")
        source = attrs.get("src") or ""
        if source.startswith("data:image/svg+xml,"):
            drawing = urllib.parse.unquote(source.split(",", 1)[1])
            for node in ElementTree.fromstring(drawing).iter():
                if node.tag.endswith("}text"):
                    self.words.append(" " + "".join(node.itertext()) + " ")

    def handle_endtag(self, tag):
        if self.hidden:
            self.hidden -= 1
        self.raw = False
        if tag not in ("span", "b", "strong", "em", "a", "sup", "sub", "i"):
            self.words.append(" ")

    def handle_data(self, data):
        if not self.hidden and not self.raw:
            self.words.append(data)


def main(out):
    compared = wrong = 0
    for page in sorted(out.glob("*/*.html")):
        text = page.read_text(encoding="utf-8")
        name = page.stem
        for pdf in sorted(page.parent.glob(f"{name}-*-a4.pdf")):
            size = pdf.stem[len(name) + 1 : -len("-a4")]
            size = "all-sizes" if size == "all" else size
            if f'<option value="{size}"' not in text:
                continue
            read = Page(size)
            read.feed(text)
            shown = figures("".join(read.words))
            printed = figures(subprocess.run(["pdftotext", "-raw", pdf, "-"], capture_output=True, text=True, check=True).stdout)
            for figure in sorted(printed - shown):
                print(f"{name}, {size}: {figure} is printed and not on the page")
            for figure in sorted(shown - printed):
                print(f"{name}, {size}: {figure} is on the page and not printed")
            wrong += len(shown ^ printed)
            compared += len(shown & printed)
    print(f"{compared} figures stand in both, {wrong} in one alone")
    sys.exit(bool(wrong) or compared == 0)


main(pathlib.Path(sys.argv[1]))
