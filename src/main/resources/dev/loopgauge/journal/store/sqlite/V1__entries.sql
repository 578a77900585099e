-- What an entry is listed and compared by.
CREATE TABLE entry (
  position            INTEGER PRIMARY KEY AUTOINCREMENT,
  id                  TEXT    NOT NULL UNIQUE,
  at_ms               INTEGER NOT NULL,
  zone                TEXT    NOT NULL,
  show_name           TEXT    NOT NULL,
  day_part            TEXT    NOT NULL CHECK (day_part IN ('before', 'during', 'after')),
  path                TEXT,
  outcome             TEXT    NOT NULL,
  delay_samples       REAL,
  rate_hz             INTEGER,
  uncertainty_samples REAL,
  corrects            TEXT
);

CREATE INDEX entry_by_time ON entry (at_ms, position);
CREATE INDEX entry_by_show ON entry (show_name, at_ms, position);
CREATE INDEX entry_by_path ON entry (path, at_ms, position);

-- Each chain file once, however many entries used it.
CREATE TABLE chain (
  digest  TEXT PRIMARY KEY,
  content TEXT NOT NULL
);

-- All else, and a digest of the whole.
CREATE TABLE detail (
  entry_id       TEXT PRIMARY KEY REFERENCES entry (id),
  note           TEXT,
  setup          TEXT NOT NULL,
  document       TEXT NOT NULL,
  chain_name     TEXT,
  chain_digest   TEXT REFERENCES chain (digest),
  backend        TEXT,
  output         TEXT,
  input          TEXT,
  card_rate_hz   INTEGER,
  block_size     INTEGER,
  capture_file   TEXT,
  capture_digest TEXT,
  tool_version   TEXT NOT NULL,
  digest         TEXT NOT NULL
);

CREATE TRIGGER entry_is_kept BEFORE UPDATE ON entry
BEGIN SELECT RAISE(ABORT, 'the journal only grows'); END;
CREATE TRIGGER entry_stays BEFORE DELETE ON entry
BEGIN SELECT RAISE(ABORT, 'the journal only grows'); END;
CREATE TRIGGER chain_is_kept BEFORE UPDATE ON chain
BEGIN SELECT RAISE(ABORT, 'the journal only grows'); END;
CREATE TRIGGER chain_stays BEFORE DELETE ON chain
BEGIN SELECT RAISE(ABORT, 'the journal only grows'); END;
CREATE TRIGGER detail_is_kept BEFORE UPDATE ON detail
BEGIN SELECT RAISE(ABORT, 'the journal only grows'); END;
CREATE TRIGGER detail_stays BEFORE DELETE ON detail
BEGIN SELECT RAISE(ABORT, 'the journal only grows'); END;

-- REPLACE takes rows away without asking the triggers above.
CREATE TRIGGER entry_is_new BEFORE INSERT ON entry
WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.id OR position = NEW.position)
BEGIN SELECT RAISE(ABORT, 'the journal only grows'); END;
CREATE TRIGGER chain_is_new BEFORE INSERT ON chain
WHEN EXISTS (SELECT 1 FROM chain WHERE digest = NEW.digest)
BEGIN SELECT RAISE(IGNORE); END;
CREATE TRIGGER detail_is_new BEFORE INSERT ON detail
WHEN EXISTS (SELECT 1 FROM detail WHERE entry_id = NEW.entry_id)
BEGIN SELECT RAISE(ABORT, 'the journal only grows'); END;
