"""What takes regeneration away: grip, brakes, a full or cold battery, a hard stop."""
