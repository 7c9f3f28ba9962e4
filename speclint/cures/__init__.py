"""The smallest changes to a plan that clear its findings, found by trying them on its measures and rules."""
