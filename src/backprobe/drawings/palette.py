"""Paper and ink, and one accent: every colour that a picture may use.

The accent is the copper of a bared wire and stands for one thing only: what was measured. Text keeps a contrast
of 7:1 on paper and on the tint (WCAG 2 level AAA), lines and fills that carry meaning keep 3:1; the tests
compute it.
"""

PAPER = "#ffffff"
TINT = "#f3f0e9"  # the allowed side, beneath its hatch
INK = "#1b1a17"  # figures, words, the limit
SOFT_INK = "#4b483f"  # bases, tick figures, captions
RULE = "#7a766b"  # axes, outlines, the hatch of the allowed side
ACCENT = "#87370c"  # what was measured

TEXT_COLOURS = (INK, SOFT_INK, ACCENT)
LINE_COLOURS = (INK, SOFT_INK, RULE, ACCENT)
GROUNDS = (PAPER, TINT)
