# SPDX-License-Identifier: GPL-3.0-or-later
"""The forecast computed another way: plain numpy and scipy in doubles, from the words of docs/science*.md.

Slow and short on purpose. It shares no code, no tables and no order of work with the program: where the
program sweeps backwards through cosine modes, this moves the whole box forwards and turns it over at every
flip; where it keeps a table, this integrates; where it solves by halving, this asks for the roots.
"""
