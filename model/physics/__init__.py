"""The physics of one car at one moment: small compiled functions, one topic a file."""
