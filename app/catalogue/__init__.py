"""The parts that a maker offers: typed, validated, frozen, and numbered by revision."""
