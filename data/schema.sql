-- The store of one shop, as the newest version makes it. What is added here is added to the newest migrate-N.sql too,
-- which brings a store of version N here. Lengths are ticks (1/160 mm), money is minor units of the currency at hand,
-- quantities are millionths of their unit, rates are parts per million. Kinds and units are the words of the job file.
-- What the model may leave open is NULL.
--
-- A job is named by `id` towards people and by the whole number `job` within the store. Names that point from one part
-- of a job to another (the room a door leads to, the carpet of an area) are not foreign keys: an edit that leaves one
-- dangling for a moment is stored all the same, and it is the job's own check that names it.

-- Numbers given out: the last of each kind. They only grow.
CREATE TABLE counters (
  name TEXT NOT NULL PRIMARY KEY,
  value INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

-- The job. Everything from here to swaps is recorded step by step for undo.
CREATE TABLE jobs (
  job INTEGER NOT NULL PRIMARY KEY,
  id TEXT NOT NULL UNIQUE,
  number TEXT,
  title TEXT,
  opened TEXT,
  notes TEXT,
  units TEXT NOT NULL,
  currency TEXT NOT NULL,
  currency_digits INTEGER NOT NULL CHECK (currency_digits BETWEEN 0 AND 9),
  tax_ppm INTEGER NOT NULL
) STRICT;

-- The customer as this job writes it, so that a correction elsewhere does not rewrite this job's papers.
CREATE TABLE customers (
  job INTEGER NOT NULL PRIMARY KEY REFERENCES jobs,
  name TEXT,
  address TEXT,
  phone TEXT,
  email TEXT,
  language TEXT -- of what is written to them; NULL: the shop's
) STRICT;

CREATE TABLE settings (
  job INTEGER NOT NULL PRIMARY KEY REFERENCES jobs,
  trim_length_ticks INTEGER NOT NULL,
  trim_width_ticks INTEGER NOT NULL,
  least_fill_width_ticks INTEGER NOT NULL,
  least_piece_length_ticks INTEGER NOT NULL,
  most_joins INTEGER NOT NULL,
  door_distance_ticks INTEGER NOT NULL,
  stagger_ticks INTEGER NOT NULL,
  strip_double_from_ticks INTEGER NOT NULL,
  closure_error_max_ticks INTEGER NOT NULL,
  closure_close_max_ticks INTEGER NOT NULL
) STRICT;

CREATE TABLE rule_costs (
  job INTEGER NOT NULL REFERENCES jobs,
  rule TEXT NOT NULL,
  cost_minor INTEGER NOT NULL,
  PRIMARY KEY (job, rule)
) STRICT, WITHOUT ROWID;

-- Goods as the job uses them, with the columns of the catalogue.
CREATE TABLE job_goods (
  job INTEGER NOT NULL REFERENCES jobs,
  id TEXT NOT NULL,
  position INTEGER NOT NULL,
  kind TEXT NOT NULL,
  name TEXT,
  supplier TEXT,
  unit TEXT NOT NULL,
  roll_width_ticks INTEGER NOT NULL,
  usable_width_ticks INTEGER NOT NULL,
  repeat_length_ticks INTEGER NOT NULL,
  repeat_width_ticks INTEGER NOT NULL,
  match TEXT NOT NULL,
  length_step_ticks INTEGER NOT NULL,
  full_roll_ticks INTEGER NOT NULL,
  pack_micro INTEGER NOT NULL,
  pack_unit TEXT NOT NULL,
  tape_width_ticks INTEGER NOT NULL,
  pack_covers_area INTEGER NOT NULL, -- doubled square ticks
  pack_covers_length_ticks INTEGER NOT NULL,
  least_cut_ticks INTEGER NOT NULL DEFAULT 0,
  PRIMARY KEY (job, id)
) STRICT, WITHOUT ROWID;

-- Rolls the job may use.
CREATE TABLE job_rolls (
  job INTEGER NOT NULL REFERENCES jobs,
  id TEXT NOT NULL,
  position INTEGER NOT NULL,
  goods TEXT,
  lot TEXT,
  length_ticks INTEGER NOT NULL,
  remnant INTEGER NOT NULL CHECK (remnant IN (0, 1)),
  place TEXT,
  width_ticks INTEGER NOT NULL DEFAULT 0,
  cut INTEGER NOT NULL DEFAULT 0 CHECK (cut IN (0, 1)),
  flaws TEXT, -- "1600-3200 9000-9640": damaged lengths from the roll's start
  PRIMARY KEY (job, id)
) STRICT, WITHOUT ROWID;

-- One visit to the house: a revision of what was measured.
CREATE TABLE measures (
  job INTEGER NOT NULL REFERENCES jobs,
  id TEXT NOT NULL,
  position INTEGER NOT NULL,
  taken TEXT,
  taken_by TEXT,
  notes TEXT,
  PRIMARY KEY (job, id)
) STRICT, WITHOUT ROWID;

CREATE TABLE rooms (
  job INTEGER NOT NULL,
  measure TEXT NOT NULL,
  id TEXT NOT NULL,
  position INTEGER NOT NULL,
  name TEXT,
  floor INTEGER NOT NULL,
  spread INTEGER NOT NULL CHECK (spread IN (0, 1)),
  placed INTEGER NOT NULL CHECK (placed IN (0, 1)),
  at_x_ticks INTEGER NOT NULL,
  at_y_ticks INTEGER NOT NULL,
  notes TEXT,
  PRIMARY KEY (job, measure, id),
  FOREIGN KEY (job, measure) REFERENCES measures (job, id)
) STRICT, WITHOUT ROWID;

CREATE TABLE walls (
  job INTEGER NOT NULL,
  measure TEXT NOT NULL,
  room TEXT NOT NULL,
  position INTEGER NOT NULL,
  bearing_degrees REAL NOT NULL,
  length_ticks INTEGER NOT NULL,
  bow_ticks INTEGER NOT NULL,
  PRIMARY KEY (job, measure, room, position),
  FOREIGN KEY (job, measure, room) REFERENCES rooms (job, measure, id)
) STRICT, WITHOUT ROWID;

CREATE TABLE outline_points (
  job INTEGER NOT NULL,
  measure TEXT NOT NULL,
  room TEXT NOT NULL,
  position INTEGER NOT NULL,
  x_ticks INTEGER NOT NULL,
  y_ticks INTEGER NOT NULL,
  PRIMARY KEY (job, measure, room, position),
  FOREIGN KEY (job, measure, room) REFERENCES rooms (job, measure, id)
) STRICT, WITHOUT ROWID;

CREATE TABLE cutouts (
  job INTEGER NOT NULL,
  measure TEXT NOT NULL,
  room TEXT NOT NULL,
  position INTEGER NOT NULL,
  name TEXT,
  kind TEXT NOT NULL DEFAULT 'other',
  diameter_ticks INTEGER NOT NULL DEFAULT 0,
  strip INTEGER NOT NULL DEFAULT 1 CHECK (strip IN (0, 1)),
  counted INTEGER NOT NULL DEFAULT 1 CHECK (counted IN (0, 1)),
  PRIMARY KEY (job, measure, room, position),
  FOREIGN KEY (job, measure, room) REFERENCES rooms (job, measure, id)
) STRICT, WITHOUT ROWID;

CREATE TABLE cutout_points (
  job INTEGER NOT NULL,
  measure TEXT NOT NULL,
  room TEXT NOT NULL,
  cutout INTEGER NOT NULL,
  position INTEGER NOT NULL,
  x_ticks INTEGER NOT NULL,
  y_ticks INTEGER NOT NULL,
  PRIMARY KEY (job, measure, room, cutout, position),
  FOREIGN KEY (job, measure, room, cutout) REFERENCES cutouts (job, measure, room, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE openings (
  job INTEGER NOT NULL,
  measure TEXT NOT NULL,
  room TEXT NOT NULL,
  id TEXT NOT NULL,
  position INTEGER NOT NULL,
  kind TEXT NOT NULL,
  wall INTEGER NOT NULL,
  offset_ticks INTEGER NOT NULL,
  width_ticks INTEGER NOT NULL,
  depth_ticks INTEGER NOT NULL,
  swing TEXT NOT NULL,
  hinge_at_end INTEGER NOT NULL CHECK (hinge_at_end IN (0, 1)),
  to_room TEXT,
  to_opening TEXT,
  transition TEXT,
  PRIMARY KEY (job, measure, room, id),
  FOREIGN KEY (job, measure, room) REFERENCES rooms (job, measure, id)
) STRICT, WITHOUT ROWID;

-- Check measurements between corners, counted from 0.
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

CREATE TABLE stairs (
  job INTEGER NOT NULL,
  measure TEXT NOT NULL,
  id TEXT NOT NULL,
  position INTEGER NOT NULL,
  name TEXT,
  steps INTEGER NOT NULL,
  rise_ticks INTEGER NOT NULL,
  going_ticks INTEGER NOT NULL,
  width_ticks INTEGER NOT NULL,
  style TEXT NOT NULL,
  nose_extra_ticks INTEGER NOT NULL,
  end_extra_ticks INTEGER NOT NULL,
  width_extra_ticks INTEGER NOT NULL,
  carpet TEXT,
  cushion TEXT,
  notes TEXT,
  cutting TEXT NOT NULL DEFAULT 'whole-flight',
  runner_width_ticks INTEGER NOT NULL DEFAULT 0,
  curved_width_ticks INTEGER NOT NULL DEFAULT 0,
  -- Unused but in the steps of before, as are winders, turn_going_ticks, turn_width_ticks and bend: the turns are rows of
  -- stair_turns; a turn here is read as the first of them and written there.
  turn TEXT NOT NULL DEFAULT 'straight',
  turn_after INTEGER NOT NULL DEFAULT 0,
  winders INTEGER NOT NULL DEFAULT 0,
  turn_going_ticks INTEGER NOT NULL DEFAULT 0,
  turn_width_ticks INTEGER NOT NULL DEFAULT 0,
  piece_extra_ticks INTEGER NOT NULL DEFAULT 8128,
  bend TEXT NOT NULL DEFAULT 'left',
  placed INTEGER NOT NULL DEFAULT 0 CHECK (placed IN (0, 1)),
  floor INTEGER NOT NULL DEFAULT 0,
  at_x_ticks INTEGER NOT NULL DEFAULT 0,
  at_y_ticks INTEGER NOT NULL DEFAULT 0,
  bearing_degrees INTEGER NOT NULL DEFAULT 0,
  PRIMARY KEY (job, measure, id),
  FOREIGN KEY (job, measure) REFERENCES measures (job, id)
) STRICT, WITHOUT ROWID;

-- Landings and winders between the flights of a stair, from the bottom up.
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

-- Rooms laid with one carpet and open to each other.
CREATE TABLE areas (
  job INTEGER NOT NULL,
  measure TEXT NOT NULL,
  id TEXT NOT NULL,
  position INTEGER NOT NULL,
  name TEXT,
  carpet TEXT,
  cushion TEXT,
  fixing TEXT NOT NULL,
  pile_degrees INTEGER NOT NULL,
  option TEXT,
  -- Unused but in the steps of before: a held seam is a pin; these are read as one and written as 0.
  seam_line_pinned INTEGER NOT NULL CHECK (seam_line_pinned IN (0, 1)),
  seam_line_ticks INTEGER NOT NULL,
  PRIMARY KEY (job, measure, id),
  FOREIGN KEY (job, measure) REFERENCES measures (job, id)
) STRICT, WITHOUT ROWID;

CREATE TABLE area_rooms (
  job INTEGER NOT NULL,
  measure TEXT NOT NULL,
  area TEXT NOT NULL,
  position INTEGER NOT NULL,
  room TEXT NOT NULL,
  PRIMARY KEY (job, measure, area, position),
  FOREIGN KEY (job, measure, area) REFERENCES areas (job, measure, id)
) STRICT, WITHOUT ROWID;

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

-- The plan picture under the floor of a storey; its bytes in `files`.
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

-- When a job was last changed, and the number of that change among all changes of all jobs: it never comes back, so a
-- job still has the revision one loaded only if nobody has changed it since. Not part of the job's steps.
CREATE TABLE revisions (
  job INTEGER NOT NULL PRIMARY KEY REFERENCES jobs,
  revision INTEGER NOT NULL UNIQUE,
  changed TEXT NOT NULL
) STRICT;

CREATE INDEX revisions_by_change ON revisions (changed, revision);

-- The steps of each job, in order. A changeset leads from the rows before the step to those after it; undone steps wait
-- for redo. Named by the job's id, for the steps of a deleted job can still be taken back.
CREATE TABLE steps (
  job_id TEXT NOT NULL,
  number INTEGER NOT NULL,
  name TEXT NOT NULL,
  made TEXT NOT NULL,
  undone INTEGER NOT NULL DEFAULT 0 CHECK (undone IN (0, 1)),
  deletes INTEGER NOT NULL DEFAULT 0 CHECK (deletes IN (0, 1)),
  changeset BLOB NOT NULL,
  PRIMARY KEY (job_id, number)
) STRICT;

-- What a job is found by; rowid = jobs.job.
CREATE VIRTUAL TABLE search USING fts5 (
  number, title, customer, address, notes,
  tokenize = "unicode61 remove_diacritics 2",
  prefix = '1 2 3'
);

-- The price book: one of it.
CREATE TABLE price_book (
  book INTEGER NOT NULL PRIMARY KEY CHECK (book = 1),
  currency TEXT NOT NULL,
  currency_digits INTEGER NOT NULL CHECK (currency_digits BETWEEN 0 AND 9),
  tax_ppm INTEGER NOT NULL,
  deposit_ppm INTEGER NOT NULL,
  shop_name TEXT,
  shop_address TEXT,
  terms TEXT,
  valid_days INTEGER NOT NULL DEFAULT 0,
  logo TEXT, -- digest in files
  job_numbers TEXT -- pattern of job numbers; NULL: the usual one
) STRICT;

CREATE TABLE catalogue (
  id TEXT NOT NULL PRIMARY KEY,
  position INTEGER NOT NULL,
  kind TEXT NOT NULL,
  name TEXT,
  supplier TEXT,
  unit TEXT NOT NULL,
  roll_width_ticks INTEGER NOT NULL,
  usable_width_ticks INTEGER NOT NULL,
  repeat_length_ticks INTEGER NOT NULL,
  repeat_width_ticks INTEGER NOT NULL,
  match TEXT NOT NULL,
  length_step_ticks INTEGER NOT NULL,
  full_roll_ticks INTEGER NOT NULL,
  pack_micro INTEGER NOT NULL,
  pack_unit TEXT NOT NULL,
  tape_width_ticks INTEGER NOT NULL,
  pack_covers_area INTEGER NOT NULL, -- doubled square ticks
  pack_covers_length_ticks INTEGER NOT NULL,
  least_cut_ticks INTEGER NOT NULL DEFAULT 0
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
  lead_days INTEGER NOT NULL,
  language TEXT
) STRICT, WITHOUT ROWID;

CREATE TABLE prices (
  position INTEGER NOT NULL PRIMARY KEY,
  item TEXT NOT NULL,
  unit TEXT NOT NULL,
  cost_minor INTEGER NOT NULL,
  sale_minor INTEGER NOT NULL,
  valid_from TEXT,
  valid_to TEXT,
  from_micro INTEGER NOT NULL
) STRICT;

-- Bytes kept for attachments and the letterhead, by their SHA-256. Nothing takes them away, for undo may want them.
CREATE TABLE files (
  digest TEXT NOT NULL PRIMARY KEY,
  bytes BLOB NOT NULL
) STRICT, WITHOUT ROWID;

-- Rolls in stock.
CREATE TABLE rolls (
  id TEXT NOT NULL PRIMARY KEY,
  goods TEXT,
  lot TEXT,
  length_ticks INTEGER NOT NULL CHECK (length_ticks >= 0),
  remnant INTEGER NOT NULL CHECK (remnant IN (0, 1)),
  place TEXT,
  width_ticks INTEGER NOT NULL DEFAULT 0, -- of a narrow remnant; 0: the goods' usable width
  flaws TEXT
) STRICT, WITHOUT ROWID;

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
  notes TEXT,
  cause TEXT -- what the program knows of it, for readers of any language: remnant R-7, order O-1, damage, no damage
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

-- Quotations as issued. They outlive the job and nothing changes them, not even a hand with another program.
CREATE TABLE issued_quotations (
  number TEXT NOT NULL PRIMARY KEY,
  serial INTEGER NOT NULL UNIQUE,
  job_id TEXT NOT NULL,
  job_revision INTEGER,
  issued TEXT NOT NULL,
  title TEXT,
  customer TEXT,
  address TEXT,
  currency TEXT NOT NULL,
  currency_digits INTEGER NOT NULL CHECK (currency_digits BETWEEN 0 AND 9),
  tax_ppm INTEGER NOT NULL,
  net_minor INTEGER NOT NULL,
  tax_minor INTEGER NOT NULL,
  total_minor INTEGER NOT NULL CHECK (total_minor = net_minor + tax_minor),
  deposit_minor INTEGER NOT NULL,
  cost_minor INTEGER NOT NULL,
  margin_minor INTEGER NOT NULL CHECK (margin_minor = net_minor - cost_minor),
  n_lines INTEGER NOT NULL,
  sum_minor INTEGER, -- of the lines, before the discount; NULL: the net
  discount_ppm INTEGER NOT NULL DEFAULT 0,
  discount_minor INTEGER NOT NULL DEFAULT 0,
  tax_name TEXT,
  detail TEXT NOT NULL DEFAULT 'full',
  valid_days INTEGER NOT NULL DEFAULT 0,
  terms TEXT,
  option_name TEXT, -- the alternative; NULL: the job as it stood
  variation INTEGER NOT NULL DEFAULT 0,
  offer TEXT, -- the first quotation of those issued together; NULL: this one
  revises TEXT -- the quotation that this one takes the place of
) STRICT, WITHOUT ROWID;

CREATE INDEX issued_quotations_by_job ON issued_quotations (job_id, serial);

CREATE TABLE issued_lines (
  number TEXT NOT NULL REFERENCES issued_quotations,
  position INTEGER NOT NULL,
  item TEXT,
  name TEXT,
  because TEXT,
  quantity_micro INTEGER NOT NULL,
  unit TEXT NOT NULL,
  packs INTEGER NOT NULL,
  pack_unit TEXT NOT NULL,
  price_minor INTEGER NOT NULL,
  amount_minor INTEGER NOT NULL,
  cost_minor INTEGER NOT NULL,
  is_work INTEGER NOT NULL CHECK (is_work IN (0, 1)),
  from_stock INTEGER NOT NULL CHECK (from_stock IN (0, 1)),
  gross_minor INTEGER, -- before the line's discount; NULL: the amount
  discount_ppm INTEGER NOT NULL DEFAULT 0,
  tax_ppm INTEGER, -- NULL: the quotation's
  optional INTEGER NOT NULL DEFAULT 0,
  hidden INTEGER NOT NULL DEFAULT 0,
  needed_micro INTEGER, -- NULL: the quantity
  needed_unit TEXT,
  from_micro INTEGER NOT NULL DEFAULT 0,
  price_since TEXT,
  PRIMARY KEY (number, position)
) STRICT, WITHOUT ROWID;

CREATE TRIGGER issued_quotations_stay BEFORE UPDATE ON issued_quotations
BEGIN
  SELECT RAISE (ABORT, 'an issued quotation is never changed');
END;

CREATE TRIGGER issued_quotations_remain BEFORE DELETE ON issued_quotations
BEGIN
  SELECT RAISE (ABORT, 'an issued quotation is never changed');
END;

CREATE TRIGGER issued_lines_stay BEFORE UPDATE ON issued_lines
BEGIN
  SELECT RAISE (ABORT, 'an issued quotation is never changed');
END;

CREATE TRIGGER issued_lines_remain BEFORE DELETE ON issued_lines
BEGIN
  SELECT RAISE (ABORT, 'an issued quotation is never changed');
END;

CREATE TRIGGER issued_lines_complete BEFORE INSERT ON issued_lines
WHEN NEW.position NOT BETWEEN 0 AND (SELECT n_lines - 1 FROM issued_quotations WHERE number = NEW.number)
BEGIN
  SELECT RAISE (ABORT, 'an issued quotation is never changed');
END;

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
