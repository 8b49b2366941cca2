"""Draws what the checks reckon with, as SVG: to scale, in lines and hatching, with its numbers written in."""
