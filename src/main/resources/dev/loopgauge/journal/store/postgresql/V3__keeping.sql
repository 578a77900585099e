-- Where and in what order entries were kept, so that a missing one is seen and a clock that ran back
-- changes nothing. Entries of versions 1 and 2, and those of exports of these, have no origin.
ALTER TABLE entry ADD COLUMN offset_s INTEGER;
ALTER TABLE entry ADD COLUMN heading_digest TEXT;
ALTER TABLE entry ADD COLUMN origin TEXT;
ALTER TABLE entry ADD COLUMN number BIGINT NOT NULL DEFAULT 0;
ALTER TABLE entry ADD COLUMN link TEXT;
ALTER TABLE entry ADD COLUMN order_ms BIGINT NOT NULL DEFAULT 0;

DROP TRIGGER entry_is_kept ON entry;
UPDATE entry SET order_ms = at_ms;
CREATE TRIGGER entry_is_kept BEFORE UPDATE OR DELETE OR TRUNCATE ON entry
  EXECUTE FUNCTION journal_only_grows();

DROP INDEX entry_by_time;
DROP INDEX entry_by_show;
DROP INDEX entry_by_path;
CREATE INDEX entry_by_order ON entry (order_ms, number, position);
CREATE INDEX entry_by_show ON entry (show_name, order_ms, number, position);
CREATE INDEX entry_by_path ON entry (path, order_ms, number, position);

-- This journal as an origin, in one row: how many entries it kept, the last one's link and order,
-- and how many entries there are that have no origin.
CREATE TABLE own_origin (
  id        TEXT   NOT NULL,
  kept      BIGINT NOT NULL,
  link      TEXT   NOT NULL,
  order_ms  BIGINT,
  unchained BIGINT NOT NULL
);
INSERT INTO own_origin (id, kept, link, unchained)
  SELECT replace(gen_random_uuid()::text, '-', ''), 0, '', (SELECT count(*) FROM entry);
