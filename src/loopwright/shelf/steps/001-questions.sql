-- What makers asked, with the design, its version and the row. `asked`: the blanks of the sentence, JSON. `at_s`: seconds since 1970.
CREATE TABLE question (
  id INTEGER PRIMARY KEY,
  design TEXT NOT NULL,
  version TEXT NOT NULL DEFAULT '',
  kind TEXT NOT NULL CHECK (kind IN ('count', 'gauge', 'yarn', 'measure')),
  size TEXT NOT NULL,
  section TEXT NOT NULL DEFAULT '',
  label TEXT NOT NULL DEFAULT '',
  asked TEXT NOT NULL,
  heading TEXT NOT NULL,
  sent TEXT NOT NULL,
  at_s REAL NOT NULL
) STRICT;
CREATE INDEX question_of_design ON question (design, at_s);
