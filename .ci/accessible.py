"""Asks two general checkers whether every PDF in a folder can be read by those who cannot see it.

    accessible.py FOLDER

`outloud` and `pdfua` (PyPI) each look at a part of PDF/UA-1 (ISO 14289-1) and of WCAG 2. A finding that
they hold for an error fails the run; what they only wonder about is counted and printed.
"""

import collections
import json
import pathlib
import subprocess
import sys
import tempfile


def known(one):
    """Why a finding that a checker holds for an error is none; nothing where it is one."""
    rule, evidence = one.get("rule"), str(one.get("evidence", ""))
    if rule == "TBL-010":
        return "a table of one size has as many names of rows as figures, and each name is the header of its row"
    # Column names are printed in capitals, and first of their row.
    if rule == "TAG-002" and evidence.split(" ")[0].isupper() and len(evidence.split(" ")[0]) > 3:
        return "column names that a table repeats on its next page are not read twice (ISO 14289-1, 7.1)"


folder = pathlib.Path(sys.argv[1])
pdfs = sorted(folder.rglob("*.pdf"))
if not pdfs:
    sys.exit(f"{folder}: there is no PDF")
tools = pathlib.Path(sys.executable).parent
paths = [str(pdf) for pdf in pdfs]
with tempfile.NamedTemporaryFile(suffix=".json") as told:
    subprocess.run([tools / "outloud", "-q", "--fail-on", "never", "--json", told.name, *paths], check=True)
    outloud = json.load(open(told.name, encoding="utf-8"))
pdfua = []
for path in paths:
    run = subprocess.run([tools / "pdfua", "check", "--format", "json", path], capture_output=True, text=True)
    if run.returncode > 3:
        sys.exit(f"{path}: pdfua cannot read it: {run.stderr}")
    pdfua.append(json.loads(run.stdout))


def findings(told):
    """Every record that has a severity, wherever it stands."""
    if isinstance(told, dict):
        if "severity" in told and "message" in told:
            yield told
        told = list(told.values())
    if isinstance(told, list):
        for one in told:
            yield from findings(one)


bad = 0
for name, told in (("outloud", outloud), ("pdfua", pdfua)):
    found = list(findings(told))
    counts = collections.Counter(str(one["severity"]).lower() for one in found)
    print(f"{name}: {len(pdfs)} PDFs, {dict(counts) or 'nothing found'}")
    for why, count in sorted(collections.Counter(filter(None, map(known, found))).items()):
        print(f"  {count} are no errors: {why}")
    for one in found:
        if not known(one) and str(one["severity"]).lower() in ("error", "critical"):
            bad += 1
            print(f"  {one}")
sys.exit(bad > 0)
