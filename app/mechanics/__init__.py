"""The sums that rules ask for: pure functions of spans and numbers, each with its units and its source."""
