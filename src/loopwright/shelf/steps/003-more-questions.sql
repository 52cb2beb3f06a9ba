-- More kinds of questions: how it looks, chains to begin with, whether a turning chain counts, balls of another yarn.
CREATE TABLE question_new (
  id INTEGER PRIMARY KEY,
  design TEXT NOT NULL,
  version TEXT NOT NULL DEFAULT '',
  kind TEXT NOT NULL CHECK (kind IN ('count', 'gauge', 'yarn', 'measure', 'looks', 'chain', 'turning', 'balls')),
  size TEXT NOT NULL,
  section TEXT NOT NULL DEFAULT '',
  label TEXT NOT NULL DEFAULT '',
  asked TEXT NOT NULL,
  heading TEXT NOT NULL,
  sent TEXT NOT NULL,
  at_s REAL NOT NULL
) STRICT;
INSERT INTO question_new SELECT id, design, version, kind, size, section, label, asked, heading, sent, at_s FROM question;
DROP TABLE question;
ALTER TABLE question_new RENAME TO question;
CREATE INDEX question_of_design ON question (design, at_s);
