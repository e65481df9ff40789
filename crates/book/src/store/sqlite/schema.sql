-- The book, version 1. docs/formats/journal.md describes it for other programs.

CREATE TABLE entry (
  position INTEGER PRIMARY KEY CHECK (position > 0),
  id TEXT NOT NULL UNIQUE,
  link BLOB NOT NULL CHECK (length(link) = 32),
  text TEXT NOT NULL
) STRICT;

CREATE TABLE snapshot (
  one INTEGER PRIMARY KEY CHECK (one = 1),
  position INTEGER NOT NULL,
  link BLOB NOT NULL,
  hash BLOB NOT NULL,
  bytes BLOB NOT NULL
) STRICT;

-- Whoever writes with another tool meets the rule, too.
CREATE TRIGGER entry_is_never_changed BEFORE UPDATE ON entry
BEGIN
  SELECT RAISE(ABORT, 'an entry is never changed; correct it by a further entry');
END;

CREATE TRIGGER entry_is_never_removed BEFORE DELETE ON entry
BEGIN
  SELECT RAISE(ABORT, 'an entry is never removed; strike it by a further entry');
END;

CREATE TRIGGER entry_comes_next BEFORE INSERT ON entry
WHEN NEW.position <> (SELECT coalesce(max(position), 0) + 1 FROM entry)
  OR EXISTS (SELECT 1 FROM entry WHERE id = NEW.id)
BEGIN
  SELECT RAISE(ABORT, 'entries are added at the end, once, without a gap');
END;
