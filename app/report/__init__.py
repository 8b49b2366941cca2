"""What a check tells: the kits that fit, why the others don't, what to pull, and what to measure next."""
