"""Compares two tables: words must be the same, figures may differ by a millionth.

The last places of a reckoned area may change with the version of the library that reckons it.
"""

import csv
import math
import sys


def same(one: str, other: str) -> bool:
    if one == other:
        return True
    try:
        return math.isclose(float(one), float(other), rel_tol=1e-6, abs_tol=1e-4)
    except ValueError:
        return False


def main() -> int:
    kept, made = (list(csv.reader(open(path, encoding="utf-8", newline=""))) for path in sys.argv[1:3])
    if len(kept) != len(made):
        print(f"{len(made)} lines were made, and {len(kept)} are kept")
        return 1
    faults = 0
    for number, (old, new) in enumerate(zip(kept, made), start=1):
        if len(old) != len(new) or not all(map(same, old, new)):
            faults += 1
            print(f"line {number}:\n  kept {','.join(old)}\n  made {','.join(new)}")
    print(f"{len(kept)} lines, {faults} differ")
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
