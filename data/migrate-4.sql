-- From a store of version 4 to one of version 5. New columns of a job's tables go to the end and have a default, so that
-- the steps recorded before can still be undone; tables, indexes and triggers are those of schema.sql.

CREATE TABLE stair_turns (
  job INTEGER NOT NULL,
  measure TEXT NOT NULL,
  stair TEXT NOT NULL,
  position INTEGER NOT NULL,
  kind TEXT NOT NULL,
  bend TEXT NOT NULL,
  after INTEGER NOT NULL,
  winders INTEGER NOT NULL,
  going_ticks INTEGER NOT NULL,
  width_ticks INTEGER NOT NULL,
  PRIMARY KEY (job, measure, stair, position),
  FOREIGN KEY (job, measure, stair) REFERENCES stairs (job, measure, id)
) STRICT, WITHOUT ROWID;

-- A row stored before its table got a column has none, and to the recording of steps its value is NULL there, not the
-- default: what changed or deleted such a row could not be undone. So all rows are stored anew, with all their columns.
UPDATE customers SET name = name;
UPDATE cutouts SET position = position;
UPDATE job_goods SET position = position;
UPDATE job_rolls SET position = position;
UPDATE stairs SET position = position;
