"""Holds every manifest below a folder against the schema that lies beside it (JSON Schema 2020-12), and every file of its
folder against its checksum."""

import hashlib
import json
import pathlib
import sys

from jsonschema import Draft202012Validator

wrong = []
manifests = sorted(pathlib.Path(sys.argv[1]).glob("*/*/manifest.json"))
for manifest in manifests:
    folder = manifest.parent
    schema = json.loads((folder / "manifest.schema.json").read_text())
    Draft202012Validator.check_schema(schema)
    faults = list(Draft202012Validator(schema).iter_errors(json.loads(manifest.read_text())))
    wrong += [f"{manifest}: {list(fault.path)}: {fault.message[:200]}" for fault in faults[:5]]
    sums = dict(reversed(line.split("  ", 1)) for line in (folder / "checksums.txt").read_text().splitlines())
    files = {str(path.relative_to(folder)): path for path in folder.rglob("*") if path.is_file()}
    files.pop("checksums.txt")
    if set(sums) != set(files):
        wrong.append(f"{folder}: checksums and files are not of the same names")
    wrong += [
        f"{path}: not its checksum"
        for name, path in files.items()
        if sums.get(name) != hashlib.sha256(path.read_bytes()).hexdigest()
    ]
if not manifests:
    wrong.append(f"no manifest below {sys.argv[1]}")
if wrong:
    sys.exit("\n".join(wrong))
print(f"{len(manifests)} manifests are valid, and their folders whole")
