"""Frozen data only: the tree (as written), the fabric (as made), the report of a worked pattern, the design."""
