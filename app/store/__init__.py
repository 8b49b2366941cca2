"""Keeps builds, their revisions and the catalogues that judged them, and loses nothing it said was saved."""
