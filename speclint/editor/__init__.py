"""The language server: a plan, and what is found in it, while it is typed."""
