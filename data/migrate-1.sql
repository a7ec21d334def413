-- From a store of version 1 to one of version 2. New columns of a job's tables go to the end and have a default, so that
-- the steps recorded before can still be undone; tables, indexes and triggers are those of schema.sql.

ALTER TABLE job_goods ADD COLUMN least_cut_ticks INTEGER NOT NULL DEFAULT 0;
ALTER TABLE catalogue ADD COLUMN least_cut_ticks INTEGER NOT NULL DEFAULT 0;
ALTER TABLE job_rolls ADD COLUMN width_ticks INTEGER NOT NULL DEFAULT 0;
ALTER TABLE job_rolls ADD COLUMN cut INTEGER NOT NULL DEFAULT 0 CHECK (cut IN (0, 1));
ALTER TABLE job_rolls ADD COLUMN flaws TEXT;
ALTER TABLE price_book ADD COLUMN valid_days INTEGER NOT NULL DEFAULT 0;
ALTER TABLE price_book ADD COLUMN logo TEXT;

-- The day on which a job came to each state.
CREATE TABLE job_states (
  job INTEGER NOT NULL REFERENCES jobs,
  state TEXT NOT NULL,
  reached TEXT NOT NULL,
  PRIMARY KEY (job, state)
) STRICT, WITHOUT ROWID;

-- Papers and pictures: bytes in `files` under their digest, or a file that is only named.
CREATE TABLE attachments (
  job INTEGER NOT NULL REFERENCES jobs,
  id TEXT NOT NULL,
  position INTEGER NOT NULL,
  name TEXT,
  place TEXT,
  digest TEXT,
  notes TEXT,
  added TEXT,
  PRIMARY KEY (job, id)
) STRICT, WITHOUT ROWID;

-- What the office settles for the job's quotation.
CREATE TABLE offers (
  job INTEGER NOT NULL PRIMARY KEY REFERENCES jobs,
  discount_ppm INTEGER NOT NULL,
  discount_minor INTEGER NOT NULL,
  detail TEXT NOT NULL,
  valid_days INTEGER NOT NULL,
  terms TEXT,
  tax_area TEXT
) STRICT;

CREATE TABLE offer_lines (
  job INTEGER NOT NULL REFERENCES jobs,
  item TEXT NOT NULL,
  position INTEGER NOT NULL,
  optional INTEGER NOT NULL CHECK (optional IN (0, 1)),
  hidden INTEGER NOT NULL CHECK (hidden IN (0, 1)),
  discount_ppm INTEGER NOT NULL,
  tax_ppm INTEGER NOT NULL,
  PRIMARY KEY (job, item)
) STRICT, WITHOUT ROWID;

CREATE TABLE offer_extras (
  job INTEGER NOT NULL REFERENCES jobs,
  id TEXT NOT NULL,
  position INTEGER NOT NULL,
  item TEXT,
  name TEXT,
  quantity_micro INTEGER NOT NULL,
  unit TEXT NOT NULL,
  price_minor INTEGER NOT NULL,
  cost_minor INTEGER NOT NULL,
  is_work INTEGER NOT NULL CHECK (is_work IN (0, 1)),
  PRIMARY KEY (job, id)
) STRICT, WITHOUT ROWID;

CREATE TABLE offer_payments (
  job INTEGER NOT NULL REFERENCES jobs,
  position INTEGER NOT NULL,
  name TEXT,
  part_ppm INTEGER NOT NULL,
  days INTEGER NOT NULL,
  PRIMARY KEY (job, position)
) STRICT, WITHOUT ROWID;

-- Other ways to do the job.
CREATE TABLE alternatives (
  job INTEGER NOT NULL REFERENCES jobs,
  id TEXT NOT NULL,
  position INTEGER NOT NULL,
  name TEXT,
  PRIMARY KEY (job, id)
) STRICT, WITHOUT ROWID;

CREATE TABLE swaps (
  job INTEGER NOT NULL,
  alternative TEXT NOT NULL,
  position INTEGER NOT NULL,
  place TEXT,
  carpet TEXT,
  option TEXT,
  PRIMARY KEY (job, alternative, position),
  FOREIGN KEY (job, alternative) REFERENCES alternatives (job, id)
) STRICT, WITHOUT ROWID;

CREATE TABLE book_payments (
  position INTEGER NOT NULL PRIMARY KEY,
  name TEXT,
  part_ppm INTEGER NOT NULL,
  days INTEGER NOT NULL
) STRICT;

CREATE TABLE tax_areas (
  id TEXT NOT NULL PRIMARY KEY,
  position INTEGER NOT NULL,
  name TEXT,
  goods_ppm INTEGER NOT NULL,
  work_ppm INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE suppliers (
  name TEXT NOT NULL PRIMARY KEY,
  position INTEGER NOT NULL,
  address TEXT,
  phone TEXT,
  email TEXT,
  account TEXT,
  freight_cost_minor INTEGER NOT NULL,
  freight_sale_minor INTEGER NOT NULL,
  freight_free_from_minor INTEGER NOT NULL,
  lead_days INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

-- Bytes kept for attachments and the letterhead, by their SHA-256. Nothing takes them away, for undo may want them.
CREATE TABLE files (
  digest TEXT NOT NULL PRIMARY KEY,
  bytes BLOB NOT NULL
) STRICT, WITHOUT ROWID;

-- What the estimator has fixed in an area's plan; points in the room's own coordinates.
CREATE TABLE pins (
  job INTEGER NOT NULL,
  measure TEXT NOT NULL,
  area TEXT NOT NULL,
  position INTEGER NOT NULL,
  kind TEXT NOT NULL,
  room TEXT,
  roll TEXT,
  PRIMARY KEY (job, measure, area, position),
  FOREIGN KEY (job, measure, area) REFERENCES areas (job, measure, id)
) STRICT, WITHOUT ROWID;

CREATE TABLE pin_points (
  job INTEGER NOT NULL,
  measure TEXT NOT NULL,
  area TEXT NOT NULL,
  pin INTEGER NOT NULL,
  position INTEGER NOT NULL,
  x_ticks INTEGER NOT NULL,
  y_ticks INTEGER NOT NULL,
  PRIMARY KEY (job, measure, area, pin, position),
  FOREIGN KEY (job, measure, area, pin) REFERENCES pins (job, measure, area, position)
) STRICT, WITHOUT ROWID;
