"""What a check tells."""
