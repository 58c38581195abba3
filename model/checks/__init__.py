"""The model beside published figures."""
