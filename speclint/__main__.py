"""`python -m speclint`."""

from speclint.commands.main import entry

if __name__ == "__main__":  # a worker process reads this file too, under another name
    entry()
