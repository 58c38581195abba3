"""The drive and its answer to take along: a page to print, files, and a way to open them again."""
