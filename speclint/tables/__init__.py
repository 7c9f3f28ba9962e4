"""The project's reference data, read as typed rows that each carry a citation."""
