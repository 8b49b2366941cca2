"""Pictures of the pages for the README, and of every page at two widths for looking at."""
