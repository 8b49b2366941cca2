"""The JSON API under /api/v1: the same checks and builds as on the pages, for programs."""
