"""Measurements that run by themselves: `python -m tests.bench.check`. They print figures and are no tests."""
