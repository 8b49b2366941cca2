"""What is known of a bike and of what its rider wants: spans, choices and the one table of facts."""
