"""Starts every command with nothing but Python: `python3 -m app serve`, `test`, `check`, `catalogue`."""

import sys

if sys.version_info < (3, 11):
    sys.exit(f"Axlewright needs Python 3.11 or later. This one is {sys.version.split()[0]}.")

from app.bootstrap import main

if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
