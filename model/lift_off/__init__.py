"""What the car does when the foot comes up, and which strength suits a drive."""
