"""Rules and the engine that asks them."""
