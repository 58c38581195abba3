"""Findings in words: every sentence that a reader meets stands in a message file and is said from here."""
