-- From a store of version 1 to one of version 2. New columns of a job's tables go to the end and have a default, so that
-- the steps recorded before can still be undone; tables, indexes and triggers are those of schema.sql.

ALTER TABLE job_goods ADD COLUMN least_cut_ticks INTEGER NOT NULL DEFAULT 0;
ALTER TABLE catalogue ADD COLUMN least_cut_ticks INTEGER NOT NULL DEFAULT 0;
ALTER TABLE job_rolls ADD COLUMN width_ticks INTEGER NOT NULL DEFAULT 0;
ALTER TABLE job_rolls ADD COLUMN cut INTEGER NOT NULL DEFAULT 0 CHECK (cut IN (0, 1));
ALTER TABLE job_rolls ADD COLUMN flaws TEXT;
ALTER TABLE stairs ADD COLUMN cutting TEXT NOT NULL DEFAULT 'whole-flight';
ALTER TABLE stairs ADD COLUMN runner_width_ticks INTEGER NOT NULL DEFAULT 0;
ALTER TABLE stairs ADD COLUMN curved_width_ticks INTEGER NOT NULL DEFAULT 0;
ALTER TABLE stairs ADD COLUMN turn TEXT NOT NULL DEFAULT 'straight';
ALTER TABLE stairs ADD COLUMN turn_after INTEGER NOT NULL DEFAULT 0;
ALTER TABLE stairs ADD COLUMN winders INTEGER NOT NULL DEFAULT 0;
ALTER TABLE stairs ADD COLUMN turn_going_ticks INTEGER NOT NULL DEFAULT 0;
ALTER TABLE stairs ADD COLUMN turn_width_ticks INTEGER NOT NULL DEFAULT 0;
ALTER TABLE stairs ADD COLUMN piece_extra_ticks INTEGER NOT NULL DEFAULT 8128;
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

-- The plan picture under the floor of a storey: a view aid, no part of the job's steps.
CREATE TABLE pictures (
  job_id TEXT NOT NULL,
  storey INTEGER NOT NULL,
  name TEXT,
  digest TEXT NOT NULL REFERENCES files(digest),
  page INTEGER NOT NULL,
  x_ticks INTEGER NOT NULL, -- of its top left corner in the house
  y_ticks INTEGER NOT NULL,
  ticks_per_1000px INTEGER NOT NULL CHECK (ticks_per_1000px > 0),
  turn_millidegrees INTEGER NOT NULL,
  strength_percent INTEGER NOT NULL CHECK (strength_percent BETWEEN 0 AND 100),
  PRIMARY KEY (job_id, storey)
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

ALTER TABLE issued_quotations ADD COLUMN sum_minor INTEGER;
ALTER TABLE issued_quotations ADD COLUMN discount_ppm INTEGER NOT NULL DEFAULT 0;
ALTER TABLE issued_quotations ADD COLUMN discount_minor INTEGER NOT NULL DEFAULT 0;
ALTER TABLE issued_quotations ADD COLUMN tax_name TEXT;
ALTER TABLE issued_quotations ADD COLUMN detail TEXT NOT NULL DEFAULT 'full';
ALTER TABLE issued_quotations ADD COLUMN valid_days INTEGER NOT NULL DEFAULT 0;
ALTER TABLE issued_quotations ADD COLUMN terms TEXT;
ALTER TABLE issued_quotations ADD COLUMN option_name TEXT;
ALTER TABLE issued_quotations ADD COLUMN variation INTEGER NOT NULL DEFAULT 0;
ALTER TABLE issued_quotations ADD COLUMN offer TEXT;
ALTER TABLE issued_quotations ADD COLUMN revises TEXT;
ALTER TABLE issued_lines ADD COLUMN gross_minor INTEGER;
ALTER TABLE issued_lines ADD COLUMN discount_ppm INTEGER NOT NULL DEFAULT 0;
ALTER TABLE issued_lines ADD COLUMN tax_ppm INTEGER;
ALTER TABLE issued_lines ADD COLUMN optional INTEGER NOT NULL DEFAULT 0;
ALTER TABLE issued_lines ADD COLUMN hidden INTEGER NOT NULL DEFAULT 0;
ALTER TABLE issued_lines ADD COLUMN needed_micro INTEGER;
ALTER TABLE issued_lines ADD COLUMN needed_unit TEXT;
ALTER TABLE issued_lines ADD COLUMN from_micro INTEGER NOT NULL DEFAULT 0;
ALTER TABLE issued_lines ADD COLUMN price_since TEXT;
ALTER TABLE rolls ADD COLUMN width_ticks INTEGER NOT NULL DEFAULT 0;
ALTER TABLE rolls ADD COLUMN flaws TEXT;

-- Lengths of rolls that are promised to jobs.
CREATE TABLE reservations (
  roll TEXT NOT NULL REFERENCES rolls,
  job_id TEXT NOT NULL,
  length_ticks INTEGER NOT NULL CHECK (length_ticks > 0),
  made TEXT NOT NULL,
  PRIMARY KEY (roll, job_id)
) STRICT, WITHOUT ROWID;

CREATE INDEX reservations_by_job ON reservations (job_id);

-- What happened to each roll. `length_ticks` is what was added to (below 0: taken from) what is left or promised.
CREATE TABLE roll_moves (
  move INTEGER NOT NULL PRIMARY KEY,
  roll TEXT NOT NULL,
  kind TEXT NOT NULL,
  job_id TEXT,
  length_ticks INTEGER NOT NULL,
  balance_ticks INTEGER NOT NULL CHECK (balance_ticks >= 0),
  made TEXT NOT NULL,
  notes TEXT
) STRICT;

CREATE INDEX roll_moves_by_roll ON roll_moves (roll, move);

-- Pieces cut for jobs.
CREATE TABLE cut_pieces (
  cut INTEGER NOT NULL PRIMARY KEY,
  job_id TEXT NOT NULL,
  roll TEXT NOT NULL,
  goods TEXT,
  lot TEXT,
  piece TEXT,
  width_ticks INTEGER NOT NULL CHECK (width_ticks > 0),
  length_ticks INTEGER NOT NULL CHECK (length_ticks > 0),
  made TEXT NOT NULL
) STRICT;

CREATE INDEX cut_pieces_by_job ON cut_pieces (job_id, cut);

-- No roll is promised for more than it has.
CREATE TRIGGER reservations_fit_when_made AFTER INSERT ON reservations
WHEN (SELECT sum (length_ticks) FROM reservations WHERE roll = NEW.roll)
     > (SELECT length_ticks FROM rolls WHERE id = NEW.roll)
BEGIN
  SELECT RAISE (ABORT, 'more is promised than the roll has');
END;

CREATE TRIGGER reservations_fit_when_changed AFTER UPDATE ON reservations
WHEN (SELECT sum (length_ticks) FROM reservations WHERE roll = NEW.roll)
     > (SELECT length_ticks FROM rolls WHERE id = NEW.roll)
BEGIN
  SELECT RAISE (ABORT, 'more is promised than the roll has');
END;

CREATE TRIGGER reservations_fit_the_roll AFTER UPDATE ON rolls
WHEN (SELECT sum (length_ticks) FROM reservations WHERE roll = NEW.id) > NEW.length_ticks
BEGIN
  SELECT RAISE (ABORT, 'more is promised than the roll has');
END;

-- Orders to suppliers.
CREATE TABLE orders (
  number TEXT NOT NULL PRIMARY KEY,
  serial INTEGER NOT NULL UNIQUE,
  supplier TEXT NOT NULL,
  state TEXT NOT NULL,
  made TEXT NOT NULL,
  sent TEXT,
  confirmed TEXT,
  reference TEXT, -- the supplier's number
  due TEXT,
  received TEXT,
  notes TEXT,
  currency TEXT NOT NULL,
  currency_digits INTEGER NOT NULL CHECK (currency_digits BETWEEN 0 AND 9),
  net_minor INTEGER NOT NULL,
  tax_minor INTEGER NOT NULL,
  total_minor INTEGER NOT NULL CHECK (total_minor = net_minor + tax_minor)
) STRICT, WITHOUT ROWID;

CREATE TABLE order_jobs (
  number TEXT NOT NULL REFERENCES orders,
  job_id TEXT NOT NULL,
  PRIMARY KEY (number, job_id)
) STRICT, WITHOUT ROWID;

CREATE INDEX order_jobs_by_job ON order_jobs (job_id);

CREATE TABLE order_lines (
  number TEXT NOT NULL REFERENCES orders,
  position INTEGER NOT NULL,
  item TEXT NOT NULL,
  name TEXT,
  because TEXT,
  quantity_micro INTEGER NOT NULL CHECK (quantity_micro >= 0),
  unit TEXT NOT NULL,
  packs INTEGER NOT NULL,
  pack_unit TEXT NOT NULL,
  price_minor INTEGER NOT NULL,
  amount_minor INTEGER NOT NULL,
  received_micro INTEGER NOT NULL DEFAULT 0 CHECK (received_micro BETWEEN 0 AND quantity_micro),
  PRIMARY KEY (number, position)
) STRICT, WITHOUT ROWID;

-- The quotation's taxes by rate and its steps of payment.
CREATE TABLE issued_taxes (
  number TEXT NOT NULL REFERENCES issued_quotations,
  tax_ppm INTEGER NOT NULL,
  net_minor INTEGER NOT NULL,
  tax_minor INTEGER NOT NULL,
  PRIMARY KEY (number, tax_ppm)
) STRICT, WITHOUT ROWID;

CREATE TABLE issued_payments (
  number TEXT NOT NULL REFERENCES issued_quotations,
  position INTEGER NOT NULL,
  name TEXT,
  part_ppm INTEGER NOT NULL,
  days INTEGER NOT NULL,
  amount_minor INTEGER NOT NULL,
  PRIMARY KEY (number, position)
) STRICT, WITHOUT ROWID;

-- The paper as the customer got it: PDF in files.
CREATE TABLE issued_papers (
  number TEXT NOT NULL PRIMARY KEY REFERENCES issued_quotations,
  digest TEXT NOT NULL REFERENCES files
) STRICT, WITHOUT ROWID;

-- What became of issued quotations; the latest counts.
CREATE TABLE quotation_events (
  event INTEGER NOT NULL PRIMARY KEY,
  number TEXT NOT NULL REFERENCES issued_quotations,
  state TEXT NOT NULL,
  day TEXT NOT NULL,
  notes TEXT
) STRICT;

CREATE INDEX quotation_events_by_number ON quotation_events (number, event);

CREATE TRIGGER issued_taxes_stay BEFORE UPDATE ON issued_taxes
BEGIN
  SELECT RAISE (ABORT, 'an issued quotation is never changed');
END;

CREATE TRIGGER issued_taxes_remain BEFORE DELETE ON issued_taxes
BEGIN
  SELECT RAISE (ABORT, 'an issued quotation is never changed');
END;

CREATE TRIGGER issued_payments_stay BEFORE UPDATE ON issued_payments
BEGIN
  SELECT RAISE (ABORT, 'an issued quotation is never changed');
END;

CREATE TRIGGER issued_payments_remain BEFORE DELETE ON issued_payments
BEGIN
  SELECT RAISE (ABORT, 'an issued quotation is never changed');
END;

CREATE TRIGGER issued_papers_stay BEFORE UPDATE ON issued_papers
BEGIN
  SELECT RAISE (ABORT, 'an issued quotation is never changed');
END;

CREATE TRIGGER issued_papers_remain BEFORE DELETE ON issued_papers
BEGIN
  SELECT RAISE (ABORT, 'an issued quotation is never changed');
END;
