"""Axlewright tells a bicycle shop whether a rear hub-motor kit fits the bike on the stand, and why."""
