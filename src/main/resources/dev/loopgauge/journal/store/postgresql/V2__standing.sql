-- The verdict over everything that was heard; null in entries of version 1 and where there is none.
ALTER TABLE entry ADD COLUMN standing TEXT
  CHECK (standing IN ('good', 'bad', 'undecided', 'not-judged'));
