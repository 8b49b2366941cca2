"""Pages, JSON API and their security: thin, over everything below."""
