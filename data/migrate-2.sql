-- From a store of version 2 to one of version 3. New columns of a job's tables go to the end and have a default, so that
-- the steps recorded before can still be undone; tables, indexes and triggers are those of schema.sql.

ALTER TABLE cutouts ADD COLUMN name TEXT;
ALTER TABLE cutouts ADD COLUMN kind TEXT NOT NULL DEFAULT 'other';
ALTER TABLE cutouts ADD COLUMN diameter_ticks INTEGER NOT NULL DEFAULT 0;
ALTER TABLE cutouts ADD COLUMN strip INTEGER NOT NULL DEFAULT 1 CHECK (strip IN (0, 1));
ALTER TABLE cutouts ADD COLUMN counted INTEGER NOT NULL DEFAULT 1 CHECK (counted IN (0, 1));

ALTER TABLE stairs ADD COLUMN bend TEXT NOT NULL DEFAULT 'left';
ALTER TABLE stairs ADD COLUMN placed INTEGER NOT NULL DEFAULT 0 CHECK (placed IN (0, 1));
ALTER TABLE stairs ADD COLUMN floor INTEGER NOT NULL DEFAULT 0;
ALTER TABLE stairs ADD COLUMN at_x_ticks INTEGER NOT NULL DEFAULT 0;
ALTER TABLE stairs ADD COLUMN at_y_ticks INTEGER NOT NULL DEFAULT 0;
ALTER TABLE stairs ADD COLUMN bearing_degrees INTEGER NOT NULL DEFAULT 0;

ALTER TABLE price_book ADD COLUMN job_numbers TEXT;

CREATE TABLE diagonals (
  job INTEGER NOT NULL,
  measure TEXT NOT NULL,
  room TEXT NOT NULL,
  position INTEGER NOT NULL,
  from_corner INTEGER NOT NULL,
  to_corner INTEGER NOT NULL,
  length_ticks INTEGER NOT NULL,
  PRIMARY KEY (job, measure, room, position),
  FOREIGN KEY (job, measure, room) REFERENCES rooms (job, measure, id)
) STRICT, WITHOUT ROWID;

CREATE TABLE job_pictures (
  job INTEGER NOT NULL REFERENCES jobs,
  storey INTEGER NOT NULL,
  name TEXT,
  digest TEXT,
  page INTEGER NOT NULL,
  x_ticks INTEGER NOT NULL, -- of its top left corner in the house
  y_ticks INTEGER NOT NULL,
  ticks_per_1000px INTEGER NOT NULL,
  turn_millidegrees INTEGER NOT NULL,
  strength_percent INTEGER NOT NULL,
  PRIMARY KEY (job, storey)
) STRICT, WITHOUT ROWID;

INSERT INTO job_pictures
  SELECT jobs.job, storey, name, digest, page, x_ticks, y_ticks, ticks_per_1000px, turn_millidegrees, strength_percent
  FROM pictures JOIN jobs ON jobs.id = pictures.job_id;
DROP TABLE pictures;
