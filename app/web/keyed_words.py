"""Words with the letter underlined that chooses them on the counter sheet."""

from __future__ import annotations

from markupsafe import Markup


def with_key(label: str, key: str) -> Markup:
    """The label with its key letter marked; a letter that it doesn't hold stands behind it."""
    place = label.lower().find(key.lower()) if key else -1
    if not key:
        return Markup("{}").format(label)
    if place < 0:
        return Markup('{} <kbd class="choice__key">{}</kbd>').format(label, key)
    before, letter, after = label[:place], label[place : place + len(key)], label[place + len(key) :]
    return Markup('{}<kbd class="choice__key">{}</kbd>{}').format(before, letter, after)
