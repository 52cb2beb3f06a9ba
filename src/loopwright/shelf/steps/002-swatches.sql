-- Yarns and swatches. What is taken off the shelf keeps its row with the time (`gone_at_s`), so that it can be put back.
-- `weight`: class 0 to 7 of the trade. `colours`: names, JSON. Lengths of a swatch in mm: so many stitches over so wide, rows over so high.
CREATE TABLE yarn (
  id INTEGER PRIMARY KEY,
  name TEXT NOT NULL,
  weight INTEGER CHECK (weight BETWEEN 0 AND 7),
  fibre TEXT NOT NULL DEFAULT '',
  ball_g REAL CHECK (ball_g > 0),
  ball_m REAL CHECK (ball_m > 0),
  colours TEXT NOT NULL DEFAULT '[]',
  gone_at_s REAL
) STRICT;
CREATE TABLE swatch (
  id INTEGER PRIMARY KEY,
  yarn INTEGER REFERENCES yarn (id),
  hook_mm REAL NOT NULL CHECK (hook_mm > 0),
  stitch TEXT NOT NULL,
  stitches REAL NOT NULL CHECK (stitches > 0),
  width_mm REAL NOT NULL CHECK (width_mm > 0),
  rows REAL NOT NULL CHECK (rows > 0),
  height_mm REAL NOT NULL CHECK (height_mm > 0),
  rounds INTEGER NOT NULL DEFAULT 0,
  washed INTEGER NOT NULL DEFAULT 0,
  mass_g REAL CHECK (mass_g > 0),
  note TEXT NOT NULL DEFAULT '',
  made_at_s REAL NOT NULL,
  gone_at_s REAL
) STRICT;
