"""What decides whether a kit fits: the rules, and the engine that asks them."""
