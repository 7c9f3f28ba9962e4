"""Pure functions of numbers: published equations, SI inside, nothing of ours imported but the decorator."""
