"""Claims, tested."""
