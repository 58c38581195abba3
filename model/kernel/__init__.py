"""The kernel: one moment of a drive, and the march over all of them with charge and pack temperature carried along."""
