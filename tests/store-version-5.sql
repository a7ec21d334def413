PRAGMA foreign_keys=OFF;
BEGIN TRANSACTION;
CREATE TABLE counters (
  name TEXT NOT NULL PRIMARY KEY,
  value INTEGER NOT NULL
) STRICT, WITHOUT ROWID;
INSERT INTO counters VALUES('job',7);
INSERT INTO counters VALUES('job id',10);
INSERT INTO counters VALUES('job number 2026-#',2);
INSERT INTO counters VALUES('order',6);
INSERT INTO counters VALUES('price book',4);
INSERT INTO counters VALUES('quotation',4);
INSERT INTO counters VALUES('revision',15);
INSERT INTO counters VALUES('roll',2);
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
INSERT INTO jobs VALUES(1,'J-1','2026-014','Gull Cottage, all floors','2026-03-02','All rooms but the kitchen. Customer would rather have a seam under the dining arch than across the living room.','imperial','USD',2,-1);
INSERT INTO jobs VALUES(2,'J-2','0012','½ in % _ * ? [x] \','Gull Cottage',replace('two\nlines	and a tab','\n',char(10)),'metric','USD',2,288922);
INSERT INTO jobs VALUES(4,'J-4','2026-001','Gull Cottage, all floors','2026-11-26','All rooms but the kitchen. Customer would rather have a seam under the dining arch than across the living room.','imperial','USD',2,-1);
INSERT INTO jobs VALUES(5,'J-8','2026-015','Version three, again','2026-03-02','All rooms but the kitchen. Customer would rather have a seam under the dining arch than across the living room.','imperial','USD',2,-1);
INSERT INTO jobs VALUES(6,'J-9','2026-016','Mill Lane, both stairs','2026-03-02',NULL,'imperial','USD',2,-1);
INSERT INTO jobs VALUES(7,'J-10','2026-002','Mill Lane, both stairs','2026-11-26',NULL,'imperial','USD',2,-1);
CREATE TABLE customers (
  job INTEGER NOT NULL PRIMARY KEY REFERENCES jobs,
  name TEXT,
  address TEXT,
  phone TEXT,
  email TEXT
, language TEXT) STRICT;
INSERT INTO customers VALUES(1,'Tamsin Oddlebury',replace('Gull Cottage\nLantern Lane\nPort Sandrel\nIsle of Thorrin','\n',char(10)),'555 0142','tamsin@gull-cottage.invalid',NULL);
INSERT INTO customers VALUES(2,'0012',NULL,'O''Shea & Sons; DROP TABLE jobs; --','Señora Ibáñez, C/ Mayor 3, 2º izq.',NULL);
INSERT INTO customers VALUES(4,'Second Customer',NULL,NULL,NULL,NULL);
INSERT INTO customers VALUES(5,'Tamsin Oddlebury',replace('Gull Cottage\nLantern Lane\nPort Sandrel\nIsle of Thorrin','\n',char(10)),'555 0142','tamsin@gull-cottage.invalid',NULL);
INSERT INTO customers VALUES(6,NULL,NULL,NULL,NULL,NULL);
INSERT INTO customers VALUES(7,'Third Customer',NULL,NULL,NULL,NULL);
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
INSERT INTO settings VALUES(1,12192,12192,36576,146304,4,97536,48768,1463040,12192,1016);
INSERT INTO settings VALUES(2,1257853,1593896,1183921,1815729,1,0,649110,1374695,143552,541563);
INSERT INTO settings VALUES(4,12192,12192,36576,146304,4,97536,48768,1463040,12192,1016);
INSERT INTO settings VALUES(5,12192,12192,36576,146304,4,97536,48768,1463040,12192,1016);
INSERT INTO settings VALUES(6,12192,12192,36576,146304,4,97536,48768,1463040,12192,1016);
INSERT INTO settings VALUES(7,12192,12192,36576,146304,4,97536,48768,1463040,12192,1016);
CREATE TABLE rule_costs (
  job INTEGER NOT NULL REFERENCES jobs,
  rule TEXT NOT NULL,
  cost_minor INTEGER NOT NULL,
  PRIMARY KEY (job, rule)
) STRICT, WITHOUT ROWID;
INSERT INTO rule_costs VALUES(1,'cross-seam-at-door',10000);
INSERT INTO rule_costs VALUES(1,'cross-seams-not-staggered',6000);
INSERT INTO rule_costs VALUES(1,'each-seam',1000);
INSERT INTO rule_costs VALUES(1,'fill-too-narrow',15000);
INSERT INTO rule_costs VALUES(1,'piece-too-short',6000);
INSERT INTO rule_costs VALUES(1,'seam-across-light',6000);
INSERT INTO rule_costs VALUES(1,'seam-across-traffic',10000);
INSERT INTO rule_costs VALUES(1,'seam-in-door-swing',10000);
INSERT INTO rule_costs VALUES(1,'seam-on-kept-floor',1000000);
INSERT INTO rule_costs VALUES(1,'seam-square-to-door',15000);
INSERT INTO rule_costs VALUES(1,'too-many-joins',10000);
INSERT INTO rule_costs VALUES(2,'cross-seam-at-door',20883);
INSERT INTO rule_costs VALUES(2,'cross-seams-not-staggered',88775);
INSERT INTO rule_costs VALUES(2,'each-seam',42561);
INSERT INTO rule_costs VALUES(2,'fill-too-narrow',1220);
INSERT INTO rule_costs VALUES(2,'piece-too-short',73834);
INSERT INTO rule_costs VALUES(2,'seam-across-light',74311);
INSERT INTO rule_costs VALUES(2,'seam-across-traffic',16451);
INSERT INTO rule_costs VALUES(2,'seam-in-door-swing',40806);
INSERT INTO rule_costs VALUES(2,'seam-on-kept-floor',95946);
INSERT INTO rule_costs VALUES(2,'seam-square-to-door',3910);
INSERT INTO rule_costs VALUES(2,'too-many-joins',63179);
INSERT INTO rule_costs VALUES(4,'cross-seam-at-door',10000);
INSERT INTO rule_costs VALUES(4,'cross-seams-not-staggered',6000);
INSERT INTO rule_costs VALUES(4,'each-seam',1000);
INSERT INTO rule_costs VALUES(4,'fill-too-narrow',15000);
INSERT INTO rule_costs VALUES(4,'piece-too-short',6000);
INSERT INTO rule_costs VALUES(4,'seam-across-light',6000);
INSERT INTO rule_costs VALUES(4,'seam-across-traffic',10000);
INSERT INTO rule_costs VALUES(4,'seam-in-door-swing',10000);
INSERT INTO rule_costs VALUES(4,'seam-on-kept-floor',1000000);
INSERT INTO rule_costs VALUES(4,'seam-square-to-door',15000);
INSERT INTO rule_costs VALUES(4,'too-many-joins',10000);
INSERT INTO rule_costs VALUES(5,'cross-seam-at-door',10000);
INSERT INTO rule_costs VALUES(5,'cross-seams-not-staggered',6000);
INSERT INTO rule_costs VALUES(5,'each-seam',1000);
INSERT INTO rule_costs VALUES(5,'fill-too-narrow',15000);
INSERT INTO rule_costs VALUES(5,'piece-too-short',6000);
INSERT INTO rule_costs VALUES(5,'seam-across-light',6000);
INSERT INTO rule_costs VALUES(5,'seam-across-traffic',10000);
INSERT INTO rule_costs VALUES(5,'seam-in-door-swing',10000);
INSERT INTO rule_costs VALUES(5,'seam-on-kept-floor',1000000);
INSERT INTO rule_costs VALUES(5,'seam-square-to-door',15000);
INSERT INTO rule_costs VALUES(5,'too-many-joins',10000);
INSERT INTO rule_costs VALUES(6,'cross-seam-at-door',10000);
INSERT INTO rule_costs VALUES(6,'cross-seams-not-staggered',6000);
INSERT INTO rule_costs VALUES(6,'each-seam',1000);
INSERT INTO rule_costs VALUES(6,'fill-too-narrow',15000);
INSERT INTO rule_costs VALUES(6,'piece-too-short',6000);
INSERT INTO rule_costs VALUES(6,'seam-across-light',6000);
INSERT INTO rule_costs VALUES(6,'seam-across-traffic',10000);
INSERT INTO rule_costs VALUES(6,'seam-in-door-swing',10000);
INSERT INTO rule_costs VALUES(6,'seam-on-kept-floor',1000000);
INSERT INTO rule_costs VALUES(6,'seam-square-to-door',15000);
INSERT INTO rule_costs VALUES(6,'too-many-joins',10000);
INSERT INTO rule_costs VALUES(7,'cross-seam-at-door',10000);
INSERT INTO rule_costs VALUES(7,'cross-seams-not-staggered',6000);
INSERT INTO rule_costs VALUES(7,'each-seam',1000);
INSERT INTO rule_costs VALUES(7,'fill-too-narrow',15000);
INSERT INTO rule_costs VALUES(7,'piece-too-short',6000);
INSERT INTO rule_costs VALUES(7,'seam-across-light',6000);
INSERT INTO rule_costs VALUES(7,'seam-across-traffic',10000);
INSERT INTO rule_costs VALUES(7,'seam-in-door-swing',10000);
INSERT INTO rule_costs VALUES(7,'seam-on-kept-floor',1000000);
INSERT INTO rule_costs VALUES(7,'seam-square-to-door',15000);
INSERT INTO rule_costs VALUES(7,'too-many-joins',10000);
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
INSERT INTO job_goods VALUES(1,'brackenholm-loop-rust',3,'carpet','Brackenholm Loop, rust','Tolland Vale Carpets','m2',640000,0,0,0,'set',16000,4000000,0,'each',0,0,0,0);
INSERT INTO job_goods VALUES(1,'carpet-adhesive',8,'adhesive','Carpet adhesive, 4 gal','Brindle Trade Supply','gal',0,0,0,0,'set',0,0,4000000,'tub',0,1541149949952,0,0);
INSERT INTO job_goods VALUES(1,'door-bar',9,'transition','Door bar, satin, 3 ft','Brindle Trade Supply','each',0,0,0,0,'set',0,0,1000000,'each',0,0,146304,0);
INSERT INTO job_goods VALUES(1,'dovecote-cushion',4,'cushion','Dovecote Cushion, 7/16 in','Brindle Trade Supply','sq yd',292608,0,0,0,'set',0,2194560,30000000,'roll',0,0,0,0);
INSERT INTO job_goods VALUES(1,'fennel-twist-oat',0,'carpet','Fennel Twist, oat','Skerrow Mills','sq yd',585216,0,0,0,'set',48768,5852160,0,'each',0,0,0,0);
INSERT INTO job_goods VALUES(1,'marlfield-trellis-moss',2,'carpet','Marlfield Trellis, moss','Tolland Vale Carpets','sq yd',585216,0,109728,73152,'half-drop',48768,4389120,0,'each',0,0,0,0);
INSERT INTO job_goods VALUES(1,'oak-reducer',10,'transition','Oak reducer, 6 ft','Brindle Trade Supply','ft',0,0,0,0,'set',0,0,6000000,'each',0,0,0,0);
INSERT INTO job_goods VALUES(1,'quillstone-saxony-slate',1,'carpet','Quillstone Saxony, slate','Skerrow Mills','sq yd',658368,0,0,0,'set',48768,4876800,0,'each',0,0,0,0);
INSERT INTO job_goods VALUES(1,'seam-sealer',6,'sealer','Seam sealer, 8 fl oz bottle','Brindle Trade Supply','each',0,0,0,0,'set',0,0,1000000,'each',0,0,4876800,0);
INSERT INTO job_goods VALUES(1,'seam-tape-3',5,'tape','Seam tape, 3 in','Brindle Trade Supply','ft',0,0,0,0,'set',0,0,66000000,'roll',12192,0,0,0);
INSERT INTO job_goods VALUES(1,'tack-strip',7,'strip','Tack strip, 4 ft lengths','Brindle Trade Supply','ft',0,0,0,0,'set',0,0,400000000,'carton',0,0,0,0);
INSERT INTO job_goods VALUES(4,'brackenholm-loop-rust',3,'carpet','Brackenholm Loop, rust','Tolland Vale Carpets','m2',640000,0,0,0,'set',16000,4000000,0,'each',0,0,0,0);
INSERT INTO job_goods VALUES(4,'carpet-adhesive',8,'adhesive','Carpet adhesive, 4 gal','Brindle Trade Supply','gal',0,0,0,0,'set',0,0,4000000,'tub',0,1541149949952,0,0);
INSERT INTO job_goods VALUES(4,'door-bar',9,'transition','Door bar, satin, 3 ft','Brindle Trade Supply','each',0,0,0,0,'set',0,0,1000000,'each',0,0,146304,0);
INSERT INTO job_goods VALUES(4,'dovecote-cushion',4,'cushion','Dovecote Cushion, 7/16 in','Brindle Trade Supply','sq yd',292608,0,0,0,'set',0,2194560,30000000,'roll',0,0,0,0);
INSERT INTO job_goods VALUES(4,'fennel-twist-oat',0,'carpet','Fennel Twist, oat','Skerrow Mills','sq yd',585216,0,0,0,'set',48768,5852160,0,'each',0,0,0,0);
INSERT INTO job_goods VALUES(4,'marlfield-trellis-moss',2,'carpet','Marlfield Trellis, moss','Tolland Vale Carpets','sq yd',585216,0,109728,73152,'half-drop',48768,4389120,0,'each',0,0,0,0);
INSERT INTO job_goods VALUES(4,'oak-reducer',10,'transition','Oak reducer, 6 ft','Brindle Trade Supply','ft',0,0,0,0,'set',0,0,6000000,'each',0,0,0,0);
INSERT INTO job_goods VALUES(4,'quillstone-saxony-slate',1,'carpet','Quillstone Saxony, slate','Skerrow Mills','sq yd',658368,0,0,0,'set',48768,4876800,0,'each',0,0,0,0);
INSERT INTO job_goods VALUES(4,'seam-sealer',6,'sealer','Seam sealer, 8 fl oz bottle','Brindle Trade Supply','each',0,0,0,0,'set',0,0,1000000,'each',0,0,4876800,0);
INSERT INTO job_goods VALUES(4,'seam-tape-3',5,'tape','Seam tape, 3 in','Brindle Trade Supply','ft',0,0,0,0,'set',0,0,66000000,'roll',12192,0,0,0);
INSERT INTO job_goods VALUES(4,'tack-strip',7,'strip','Tack strip, 4 ft lengths','Brindle Trade Supply','ft',0,0,0,0,'set',0,0,400000000,'carton',0,0,0,0);
INSERT INTO job_goods VALUES(5,'brackenholm-loop-rust',3,'carpet','Brackenholm Loop, rust','Tolland Vale Carpets','m2',640000,0,0,0,'set',16000,4000000,0,'each',0,0,0,0);
INSERT INTO job_goods VALUES(5,'carpet-adhesive',8,'adhesive','Carpet adhesive, 4 gal','Brindle Trade Supply','gal',0,0,0,0,'set',0,0,4000000,'tub',0,1541149949952,0,0);
INSERT INTO job_goods VALUES(5,'door-bar',9,'transition','Door bar, satin, 3 ft','Brindle Trade Supply','each',0,0,0,0,'set',0,0,1000000,'each',0,0,146304,0);
INSERT INTO job_goods VALUES(5,'dovecote-cushion',4,'cushion','Dovecote Cushion, 7/16 in','Brindle Trade Supply','sq yd',292608,0,0,0,'set',0,2194560,30000000,'roll',0,0,0,0);
INSERT INTO job_goods VALUES(5,'fennel-twist-oat',0,'carpet','Fennel Twist, oat','Skerrow Mills','sq yd',585216,0,0,0,'set',48768,5852160,0,'each',0,0,0,0);
INSERT INTO job_goods VALUES(5,'marlfield-trellis-moss',2,'carpet','Marlfield Trellis, moss','Tolland Vale Carpets','sq yd',585216,0,109728,73152,'half-drop',48768,4389120,0,'each',0,0,0,0);
INSERT INTO job_goods VALUES(5,'oak-reducer',10,'transition','Oak reducer, 6 ft','Brindle Trade Supply','ft',0,0,0,0,'set',0,0,6000000,'each',0,0,0,0);
INSERT INTO job_goods VALUES(5,'quillstone-saxony-slate',1,'carpet','Quillstone Saxony, slate','Skerrow Mills','sq yd',658368,0,0,0,'set',48768,4876800,0,'each',0,0,0,0);
INSERT INTO job_goods VALUES(5,'seam-sealer',6,'sealer','Seam sealer, 8 fl oz bottle','Brindle Trade Supply','each',0,0,0,0,'set',0,0,1000000,'each',0,0,4876800,0);
INSERT INTO job_goods VALUES(5,'seam-tape-3',5,'tape','Seam tape, 3 in','Brindle Trade Supply','ft',0,0,0,0,'set',0,0,66000000,'roll',12192,0,0,0);
INSERT INTO job_goods VALUES(5,'tack-strip',7,'strip','Tack strip, 4 ft lengths','Brindle Trade Supply','ft',0,0,0,0,'set',0,0,400000000,'carton',0,0,0,0);
INSERT INTO job_goods VALUES(6,'cord',0,'carpet','Cord',NULL,'sq yd',585216,0,0,0,'set',0,0,0,'each',0,0,0,0);
INSERT INTO job_goods VALUES(7,'cord',0,'carpet','Cord',NULL,'sq yd',585216,0,0,0,'set',0,0,0,'each',0,0,0,0);
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
INSERT INTO job_rolls VALUES(1,'R-0988',2,'quillstone-saxony-slate','Q-31',865632,0,'rack 5',0,0,NULL);
INSERT INTO job_rolls VALUES(1,'R-1041',0,'fennel-twist-oat','F-207',1877568,0,'rack 2',0,0,NULL);
INSERT INTO job_rolls VALUES(1,'R-1055',1,'fennel-twist-oat','F-207',455168,1,'remnant bin',0,0,NULL);
INSERT INTO job_rolls VALUES(1,'R-1102',3,'marlfield-trellis-moss','T-118',304800,1,'remnant bin',0,0,NULL);
INSERT INTO job_rolls VALUES(2,'R 10b69dc6',0,'½ in % _ * ? [x] \','Gull Cottage',1046771,1,'O''Shea & Sons; DROP TABLE jobs; --',0,1,'14162-477170 28218-457744');
INSERT INTO job_rolls VALUES(2,'R 3865fccf',1,'Gull Cottage','',796008,1,'O''Shea & Sons; DROP TABLE jobs; --',57476,1,'94509-480601 28727-195436');
INSERT INTO job_rolls VALUES(4,'R-0988',2,'quillstone-saxony-slate','Q-31',865632,0,'rack 5',0,0,NULL);
INSERT INTO job_rolls VALUES(4,'R-1041',0,'fennel-twist-oat','F-207',1877568,0,'rack 2',0,0,NULL);
INSERT INTO job_rolls VALUES(4,'R-1055',1,'fennel-twist-oat','F-207',455168,1,'remnant bin',0,0,NULL);
INSERT INTO job_rolls VALUES(4,'R-1102',3,'marlfield-trellis-moss','T-118',304800,1,'remnant bin',0,0,NULL);
INSERT INTO job_rolls VALUES(5,'R-0988',2,'quillstone-saxony-slate','Q-31',865632,0,'rack 5',0,0,NULL);
INSERT INTO job_rolls VALUES(5,'R-1041',0,'fennel-twist-oat','F-207',1877568,0,'rack 2',0,0,NULL);
INSERT INTO job_rolls VALUES(5,'R-1055',1,'fennel-twist-oat','F-207',455168,1,'remnant bin',0,0,NULL);
INSERT INTO job_rolls VALUES(5,'R-1102',3,'marlfield-trellis-moss','T-118',304800,1,'remnant bin',0,0,NULL);
CREATE TABLE measures (
  job INTEGER NOT NULL REFERENCES jobs,
  id TEXT NOT NULL,
  position INTEGER NOT NULL,
  taken TEXT,
  taken_by TEXT,
  notes TEXT,
  PRIMARY KEY (job, id)
) STRICT, WITHOUT ROWID;
INSERT INTO measures VALUES(1,'M1',0,'2026-03-04','Bram Wherry','First visit. Hall and rooms in feet and inches, garden room in metres.');
INSERT INTO measures VALUES(1,'M2',1,'2026-03-18','Bram Wherry','Second visit, plaster off the living room: only that room changed.');
INSERT INTO measures VALUES(2,'M1',0,'地毯店',replace('two\nlines	and a tab','\n',char(10)),'O''Shea & Sons; DROP TABLE jobs; --');
INSERT INTO measures VALUES(4,'M1',0,'2026-03-04','Bram Wherry','First visit. Hall and rooms in feet and inches, garden room in metres.');
INSERT INTO measures VALUES(4,'M2',1,'2026-03-18','Bram Wherry','Second visit, plaster off the living room: only that room changed.');
INSERT INTO measures VALUES(5,'M1',0,'2026-03-04','Bram Wherry','First visit. Hall and rooms in feet and inches, garden room in metres.');
INSERT INTO measures VALUES(5,'M2',1,'2026-03-18','Bram Wherry','Second visit, plaster off the living room: only that room changed.');
INSERT INTO measures VALUES(6,'M1',0,'2026-03-02',NULL,NULL);
INSERT INTO measures VALUES(7,'M1',0,'2026-03-02',NULL,NULL);
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
INSERT INTO rooms VALUES(1,'M1','bedroom',6,'Back bedroom',0,0,0,0,0,NULL);
INSERT INTO rooms VALUES(1,'M1','bedroom-closet',7,'Bedroom closet',0,0,0,0,0,NULL);
INSERT INTO rooms VALUES(1,'M1','box',5,'Box room',0,0,0,0,0,NULL);
INSERT INTO rooms VALUES(1,'M1','dining',2,'Dining room',0,0,0,0,0,'Bay to the east. D1 leads to the kitchen, which is tiled.');
INSERT INTO rooms VALUES(1,'M1','garden',8,'Garden room',0,0,0,0,0,'Taken from the builder''s drawing, so in metres. East wall curved, 300 mm in the middle.');
INSERT INTO rooms VALUES(1,'M1','hall',0,'Hall',0,0,1,0,0,NULL);
INSERT INTO rooms VALUES(1,'M1','living',1,'Living room',0,0,0,0,0,'Hearth on the west wall stays. A little wider than the roll.');
INSERT INTO rooms VALUES(1,'M1','study',3,'Study',0,1,0,0,0,'Walls out by about half an inch; spread over all six.');
INSERT INTO rooms VALUES(1,'M1','study-closet',4,'Study closet',0,0,0,0,0,NULL);
INSERT INTO rooms VALUES(1,'M2','bedroom',6,'Back bedroom',0,0,0,0,0,NULL);
INSERT INTO rooms VALUES(1,'M2','bedroom-closet',7,'Bedroom closet',0,0,0,0,0,NULL);
INSERT INTO rooms VALUES(1,'M2','box',5,'Box room',0,0,0,0,0,NULL);
INSERT INTO rooms VALUES(1,'M2','dining',2,'Dining room',0,0,0,0,0,'Bay to the east. D1 leads to the kitchen, which is tiled.');
INSERT INTO rooms VALUES(1,'M2','garden',8,'Garden room',0,0,0,0,0,'Taken from the builder''s drawing, so in metres. East wall curved, 300 mm in the middle.');
INSERT INTO rooms VALUES(1,'M2','hall',0,'Hall',0,0,1,0,0,NULL);
INSERT INTO rooms VALUES(1,'M2','living',1,'Living room',0,0,0,0,0,'Old plaster taken off the west wall: three inches wider than at the first visit. Hearth stays.');
INSERT INTO rooms VALUES(1,'M2','study',3,'Study',0,1,0,0,0,'Walls out by about half an inch; spread over all six.');
INSERT INTO rooms VALUES(1,'M2','study-closet',4,'Study closet',0,0,0,0,0,NULL);
INSERT INTO rooms VALUES(2,'M1','room 59d2bdb1',2,'½ in % _ * ? [x] \',0,0,0,58,1435784,'Gull Cottage');
INSERT INTO rooms VALUES(2,'M1','room 83cdcf75',3,'½ in % _ * ? [x] \',2,0,0,-77,125283,'Señora Ibáñez, C/ Mayor 3, 2º izq.');
INSERT INTO rooms VALUES(2,'M1','room 83e02851',1,'Señora Ibáñez, C/ Mayor 3, 2º izq.',0,0,0,-91,1237448,'O''Shea & Sons; DROP TABLE jobs; --');
INSERT INTO rooms VALUES(2,'M1','room 947b2775',0,'Señora Ibáñez, C/ Mayor 3, 2º izq.',0,1,1,54,1520645,'');
INSERT INTO rooms VALUES(4,'M1','bedroom',6,'Back bedroom',0,0,0,0,0,NULL);
INSERT INTO rooms VALUES(4,'M1','bedroom-closet',7,'Bedroom closet',0,0,0,0,0,NULL);
INSERT INTO rooms VALUES(4,'M1','box',5,'Box room',0,0,0,0,0,NULL);
INSERT INTO rooms VALUES(4,'M1','dining',2,'Dining room',0,0,0,0,0,'Bay to the east. D1 leads to the kitchen, which is tiled.');
INSERT INTO rooms VALUES(4,'M1','garden',8,'Garden room',0,0,0,0,0,'Taken from the builder''s drawing, so in metres. East wall curved, 300 mm in the middle.');
INSERT INTO rooms VALUES(4,'M1','hall',0,'Hall',0,0,1,0,0,NULL);
INSERT INTO rooms VALUES(4,'M1','living',1,'Living room',0,0,0,0,0,'Hearth on the west wall stays. A little wider than the roll.');
INSERT INTO rooms VALUES(4,'M1','study',3,'Study',0,1,0,0,0,'Walls out by about half an inch; spread over all six.');
INSERT INTO rooms VALUES(4,'M1','study-closet',4,'Study closet',0,0,0,0,0,NULL);
INSERT INTO rooms VALUES(4,'M2','bedroom',6,'Back bedroom',0,0,0,0,0,NULL);
INSERT INTO rooms VALUES(4,'M2','bedroom-closet',7,'Bedroom closet',0,0,0,0,0,NULL);
INSERT INTO rooms VALUES(4,'M2','box',5,'Box room',0,0,0,0,0,NULL);
INSERT INTO rooms VALUES(4,'M2','dining',2,'Dining room',0,0,0,0,0,'Bay to the east. D1 leads to the kitchen, which is tiled.');
INSERT INTO rooms VALUES(4,'M2','garden',8,'Garden room',0,0,0,0,0,'Taken from the builder''s drawing, so in metres. East wall curved, 300 mm in the middle.');
INSERT INTO rooms VALUES(4,'M2','hall',0,'Hall',0,0,1,0,0,NULL);
INSERT INTO rooms VALUES(4,'M2','living',1,'Living room',0,0,0,0,0,'Old plaster taken off the west wall: three inches wider than at the first visit. Hearth stays.');
INSERT INTO rooms VALUES(4,'M2','study',3,'Study',0,1,0,0,0,'Walls out by about half an inch; spread over all six.');
INSERT INTO rooms VALUES(4,'M2','study-closet',4,'Study closet',0,0,0,0,0,NULL);
INSERT INTO rooms VALUES(5,'M1','bedroom',6,'Back bedroom',0,0,0,0,0,NULL);
INSERT INTO rooms VALUES(5,'M1','bedroom-closet',7,'Bedroom closet',0,0,0,0,0,NULL);
INSERT INTO rooms VALUES(5,'M1','box',5,'Box room',0,0,0,0,0,NULL);
INSERT INTO rooms VALUES(5,'M1','dining',2,'Dining room',0,0,0,0,0,'Bay to the east. D1 leads to the kitchen, which is tiled.');
INSERT INTO rooms VALUES(5,'M1','garden',8,'Garden room',0,0,0,0,0,'Taken from the builder''s drawing, so in metres. East wall curved, 300 mm in the middle.');
INSERT INTO rooms VALUES(5,'M1','hall',0,'Hall',0,0,1,0,0,NULL);
INSERT INTO rooms VALUES(5,'M1','living',1,'Living room',0,0,0,0,0,'Hearth on the west wall stays. A little wider than the roll.');
INSERT INTO rooms VALUES(5,'M1','study',3,'Study',0,1,0,0,0,'Walls out by about half an inch; spread over all six.');
INSERT INTO rooms VALUES(5,'M1','study-closet',4,'Study closet',0,0,0,0,0,NULL);
INSERT INTO rooms VALUES(5,'M2','bedroom',6,'Back bedroom',0,0,0,0,0,NULL);
INSERT INTO rooms VALUES(5,'M2','bedroom-closet',7,'Bedroom closet',0,0,0,0,0,NULL);
INSERT INTO rooms VALUES(5,'M2','box',5,'Box room',0,0,0,0,0,NULL);
INSERT INTO rooms VALUES(5,'M2','dining',2,'Dining room',0,0,0,0,0,'Bay to the east. D1 leads to the kitchen, which is tiled.');
INSERT INTO rooms VALUES(5,'M2','garden',8,'Garden room',0,0,0,0,0,'Taken from the builder''s drawing, so in metres. East wall curved, 300 mm in the middle.');
INSERT INTO rooms VALUES(5,'M2','hall',0,'Hall',0,0,1,0,0,NULL);
INSERT INTO rooms VALUES(5,'M2','living',1,'Living room',0,0,0,0,0,'Old plaster taken off the west wall: three inches wider than at the first visit. Hearth stays.');
INSERT INTO rooms VALUES(5,'M2','study',3,'Study',0,1,0,0,0,'Walls out by about half an inch; spread over all six.');
INSERT INTO rooms VALUES(5,'M2','study-closet',4,'Study closet',0,0,0,0,0,NULL);
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
INSERT INTO walls VALUES(1,'M1','bedroom',0,90.0,682752,0);
INSERT INTO walls VALUES(1,'M1','bedroom',1,0.0,552704,0);
INSERT INTO walls VALUES(1,'M1','bedroom',2,270.0,682752,0);
INSERT INTO walls VALUES(1,'M1','bedroom',3,180.0,552704,0);
INSERT INTO walls VALUES(1,'M1','bedroom-closet',0,90.0,105664,0);
INSERT INTO walls VALUES(1,'M1','bedroom-closet',1,0.0,243840,0);
INSERT INTO walls VALUES(1,'M1','bedroom-closet',2,270.0,105664,0);
INSERT INTO walls VALUES(1,'M1','bedroom-closet',3,180.0,243840,0);
INSERT INTO walls VALUES(1,'M1','box',0,90.0,390144,0);
INSERT INTO walls VALUES(1,'M1','box',1,0.0,341376,0);
INSERT INTO walls VALUES(1,'M1','box',2,270.0,390144,0);
INSERT INTO walls VALUES(1,'M1','box',3,180.0,341376,0);
INSERT INTO walls VALUES(1,'M1','dining',0,90.0,585216,0);
INSERT INTO walls VALUES(1,'M1','dining',1,0.0,146304,0);
INSERT INTO walls VALUES(1,'M1','dining',2,45.0,137922,0);
INSERT INTO walls VALUES(1,'M1','dining',3,0.0,170688,0);
INSERT INTO walls VALUES(1,'M1','dining',4,315.0,137922,0);
INSERT INTO walls VALUES(1,'M1','dining',5,0.0,146304,0);
INSERT INTO walls VALUES(1,'M1','dining',6,270.0,585216,0);
INSERT INTO walls VALUES(1,'M1','dining',7,180.0,658368,0);
INSERT INTO walls VALUES(1,'M1','garden',0,90.0,672000,0);
INSERT INTO walls VALUES(1,'M1','garden',1,0.0,496000,48000);
INSERT INTO walls VALUES(1,'M1','garden',2,270.0,672000,0);
INSERT INTO walls VALUES(1,'M1','garden',3,180.0,496000,0);
INSERT INTO walls VALUES(1,'M1','hall',0,90.0,219456,0);
INSERT INTO walls VALUES(1,'M1','hall',1,0.0,1170432,0);
INSERT INTO walls VALUES(1,'M1','hall',2,270.0,219456,0);
INSERT INTO walls VALUES(1,'M1','hall',3,180.0,1170432,0);
INSERT INTO walls VALUES(1,'M1','living',0,90.0,650240,0);
INSERT INTO walls VALUES(1,'M1','living',1,0.0,950976,0);
INSERT INTO walls VALUES(1,'M1','living',2,270.0,650240,0);
INSERT INTO walls VALUES(1,'M1','living',3,180.0,950976,0);
INSERT INTO walls VALUES(1,'M1','study',0,90.0,536448,0);
INSERT INTO walls VALUES(1,'M1','study',1,0.0,316992,0);
INSERT INTO walls VALUES(1,'M1','study',2,270.0,238760,0);
INSERT INTO walls VALUES(1,'M1','study',3,0.0,195072,0);
INSERT INTO walls VALUES(1,'M1','study',4,270.0,298704,0);
INSERT INTO walls VALUES(1,'M1','study',5,180.0,514096,0);
INSERT INTO walls VALUES(1,'M1','study-closet',0,90.0,219456,0);
INSERT INTO walls VALUES(1,'M1','study-closet',1,0.0,176784,0);
INSERT INTO walls VALUES(1,'M1','study-closet',2,270.0,219456,0);
INSERT INTO walls VALUES(1,'M1','study-closet',3,180.0,176784,0);
INSERT INTO walls VALUES(1,'M2','bedroom',0,90.0,682752,0);
INSERT INTO walls VALUES(1,'M2','bedroom',1,0.0,552704,0);
INSERT INTO walls VALUES(1,'M2','bedroom',2,270.0,682752,0);
INSERT INTO walls VALUES(1,'M2','bedroom',3,180.0,552704,0);
INSERT INTO walls VALUES(1,'M2','bedroom-closet',0,90.0,105664,0);
INSERT INTO walls VALUES(1,'M2','bedroom-closet',1,0.0,243840,0);
INSERT INTO walls VALUES(1,'M2','bedroom-closet',2,270.0,105664,0);
INSERT INTO walls VALUES(1,'M2','bedroom-closet',3,180.0,243840,0);
INSERT INTO walls VALUES(1,'M2','box',0,90.0,390144,0);
INSERT INTO walls VALUES(1,'M2','box',1,0.0,341376,0);
INSERT INTO walls VALUES(1,'M2','box',2,270.0,390144,0);
INSERT INTO walls VALUES(1,'M2','box',3,180.0,341376,0);
INSERT INTO walls VALUES(1,'M2','dining',0,90.0,585216,0);
INSERT INTO walls VALUES(1,'M2','dining',1,0.0,146304,0);
INSERT INTO walls VALUES(1,'M2','dining',2,45.0,137922,0);
INSERT INTO walls VALUES(1,'M2','dining',3,0.0,170688,0);
INSERT INTO walls VALUES(1,'M2','dining',4,315.0,137922,0);
INSERT INTO walls VALUES(1,'M2','dining',5,0.0,146304,0);
INSERT INTO walls VALUES(1,'M2','dining',6,270.0,585216,0);
INSERT INTO walls VALUES(1,'M2','dining',7,180.0,658368,0);
INSERT INTO walls VALUES(1,'M2','garden',0,90.0,672000,0);
INSERT INTO walls VALUES(1,'M2','garden',1,0.0,496000,48000);
INSERT INTO walls VALUES(1,'M2','garden',2,270.0,672000,0);
INSERT INTO walls VALUES(1,'M2','garden',3,180.0,496000,0);
INSERT INTO walls VALUES(1,'M2','hall',0,90.0,219456,0);
INSERT INTO walls VALUES(1,'M2','hall',1,0.0,1170432,0);
INSERT INTO walls VALUES(1,'M2','hall',2,270.0,219456,0);
INSERT INTO walls VALUES(1,'M2','hall',3,180.0,1170432,0);
INSERT INTO walls VALUES(1,'M2','living',0,90.0,662432,0);
INSERT INTO walls VALUES(1,'M2','living',1,0.0,950976,0);
INSERT INTO walls VALUES(1,'M2','living',2,270.0,662432,0);
INSERT INTO walls VALUES(1,'M2','living',3,180.0,950976,0);
INSERT INTO walls VALUES(1,'M2','study',0,90.0,536448,0);
INSERT INTO walls VALUES(1,'M2','study',1,0.0,316992,0);
INSERT INTO walls VALUES(1,'M2','study',2,270.0,238760,0);
INSERT INTO walls VALUES(1,'M2','study',3,0.0,195072,0);
INSERT INTO walls VALUES(1,'M2','study',4,270.0,298704,0);
INSERT INTO walls VALUES(1,'M2','study',5,180.0,514096,0);
INSERT INTO walls VALUES(1,'M2','study-closet',0,90.0,219456,0);
INSERT INTO walls VALUES(1,'M2','study-closet',1,0.0,176784,0);
INSERT INTO walls VALUES(1,'M2','study-closet',2,270.0,219456,0);
INSERT INTO walls VALUES(1,'M2','study-closet',3,180.0,176784,0);
INSERT INTO walls VALUES(2,'M1','room 83cdcf75',0,180.0,1735028,-380);
INSERT INTO walls VALUES(2,'M1','room 83cdcf75',1,0.0,1221344,541);
INSERT INTO walls VALUES(2,'M1','room 83e02851',0,0.0,1085163,589);
INSERT INTO walls VALUES(2,'M1','room 83e02851',1,173.16783191528764973,518127,200);
INSERT INTO walls VALUES(2,'M1','room 83e02851',2,0.0,466064,661);
INSERT INTO walls VALUES(2,'M1','room 947b2775',0,180.0,193048,480);
INSERT INTO walls VALUES(2,'M1','room 947b2775',1,90.0,1297984,-799);
INSERT INTO walls VALUES(2,'M1','room 947b2775',2,90.0,699624,0);
INSERT INTO walls VALUES(4,'M1','bedroom',0,90.0,682752,0);
INSERT INTO walls VALUES(4,'M1','bedroom',1,0.0,552704,0);
INSERT INTO walls VALUES(4,'M1','bedroom',2,270.0,682752,0);
INSERT INTO walls VALUES(4,'M1','bedroom',3,180.0,552704,0);
INSERT INTO walls VALUES(4,'M1','bedroom-closet',0,90.0,105664,0);
INSERT INTO walls VALUES(4,'M1','bedroom-closet',1,0.0,243840,0);
INSERT INTO walls VALUES(4,'M1','bedroom-closet',2,270.0,105664,0);
INSERT INTO walls VALUES(4,'M1','bedroom-closet',3,180.0,243840,0);
INSERT INTO walls VALUES(4,'M1','box',0,90.0,390144,0);
INSERT INTO walls VALUES(4,'M1','box',1,0.0,341376,0);
INSERT INTO walls VALUES(4,'M1','box',2,270.0,390144,0);
INSERT INTO walls VALUES(4,'M1','box',3,180.0,341376,0);
INSERT INTO walls VALUES(4,'M1','dining',0,90.0,585216,0);
INSERT INTO walls VALUES(4,'M1','dining',1,0.0,146304,0);
INSERT INTO walls VALUES(4,'M1','dining',2,45.0,137922,0);
INSERT INTO walls VALUES(4,'M1','dining',3,0.0,170688,0);
INSERT INTO walls VALUES(4,'M1','dining',4,315.0,137922,0);
INSERT INTO walls VALUES(4,'M1','dining',5,0.0,146304,0);
INSERT INTO walls VALUES(4,'M1','dining',6,270.0,585216,0);
INSERT INTO walls VALUES(4,'M1','dining',7,180.0,658368,0);
INSERT INTO walls VALUES(4,'M1','garden',0,90.0,672000,0);
INSERT INTO walls VALUES(4,'M1','garden',1,0.0,496000,48000);
INSERT INTO walls VALUES(4,'M1','garden',2,270.0,672000,0);
INSERT INTO walls VALUES(4,'M1','garden',3,180.0,496000,0);
INSERT INTO walls VALUES(4,'M1','hall',0,90.0,219456,0);
INSERT INTO walls VALUES(4,'M1','hall',1,0.0,1170432,0);
INSERT INTO walls VALUES(4,'M1','hall',2,270.0,219456,0);
INSERT INTO walls VALUES(4,'M1','hall',3,180.0,1170432,0);
INSERT INTO walls VALUES(4,'M1','living',0,90.0,650240,0);
INSERT INTO walls VALUES(4,'M1','living',1,0.0,950976,0);
INSERT INTO walls VALUES(4,'M1','living',2,270.0,650240,0);
INSERT INTO walls VALUES(4,'M1','living',3,180.0,950976,0);
INSERT INTO walls VALUES(4,'M1','study',0,90.0,536448,0);
INSERT INTO walls VALUES(4,'M1','study',1,0.0,316992,0);
INSERT INTO walls VALUES(4,'M1','study',2,270.0,238760,0);
INSERT INTO walls VALUES(4,'M1','study',3,0.0,195072,0);
INSERT INTO walls VALUES(4,'M1','study',4,270.0,298704,0);
INSERT INTO walls VALUES(4,'M1','study',5,180.0,514096,0);
INSERT INTO walls VALUES(4,'M1','study-closet',0,90.0,219456,0);
INSERT INTO walls VALUES(4,'M1','study-closet',1,0.0,176784,0);
INSERT INTO walls VALUES(4,'M1','study-closet',2,270.0,219456,0);
INSERT INTO walls VALUES(4,'M1','study-closet',3,180.0,176784,0);
INSERT INTO walls VALUES(4,'M2','bedroom',0,90.0,682752,0);
INSERT INTO walls VALUES(4,'M2','bedroom',1,0.0,552704,0);
INSERT INTO walls VALUES(4,'M2','bedroom',2,270.0,682752,0);
INSERT INTO walls VALUES(4,'M2','bedroom',3,180.0,552704,0);
INSERT INTO walls VALUES(4,'M2','bedroom-closet',0,90.0,105664,0);
INSERT INTO walls VALUES(4,'M2','bedroom-closet',1,0.0,243840,0);
INSERT INTO walls VALUES(4,'M2','bedroom-closet',2,270.0,105664,0);
INSERT INTO walls VALUES(4,'M2','bedroom-closet',3,180.0,243840,0);
INSERT INTO walls VALUES(4,'M2','box',0,90.0,390144,0);
INSERT INTO walls VALUES(4,'M2','box',1,0.0,341376,0);
INSERT INTO walls VALUES(4,'M2','box',2,270.0,390144,0);
INSERT INTO walls VALUES(4,'M2','box',3,180.0,341376,0);
INSERT INTO walls VALUES(4,'M2','dining',0,90.0,585216,0);
INSERT INTO walls VALUES(4,'M2','dining',1,0.0,146304,0);
INSERT INTO walls VALUES(4,'M2','dining',2,45.0,137922,0);
INSERT INTO walls VALUES(4,'M2','dining',3,0.0,170688,0);
INSERT INTO walls VALUES(4,'M2','dining',4,315.0,137922,0);
INSERT INTO walls VALUES(4,'M2','dining',5,0.0,146304,0);
INSERT INTO walls VALUES(4,'M2','dining',6,270.0,585216,0);
INSERT INTO walls VALUES(4,'M2','dining',7,180.0,658368,0);
INSERT INTO walls VALUES(4,'M2','garden',0,90.0,672000,0);
INSERT INTO walls VALUES(4,'M2','garden',1,0.0,496000,48000);
INSERT INTO walls VALUES(4,'M2','garden',2,270.0,672000,0);
INSERT INTO walls VALUES(4,'M2','garden',3,180.0,496000,0);
INSERT INTO walls VALUES(4,'M2','hall',0,90.0,219456,0);
INSERT INTO walls VALUES(4,'M2','hall',1,0.0,1170432,0);
INSERT INTO walls VALUES(4,'M2','hall',2,270.0,219456,0);
INSERT INTO walls VALUES(4,'M2','hall',3,180.0,1170432,0);
INSERT INTO walls VALUES(4,'M2','living',0,90.0,662432,0);
INSERT INTO walls VALUES(4,'M2','living',1,0.0,950976,0);
INSERT INTO walls VALUES(4,'M2','living',2,270.0,662432,0);
INSERT INTO walls VALUES(4,'M2','living',3,180.0,950976,0);
INSERT INTO walls VALUES(4,'M2','study',0,90.0,536448,0);
INSERT INTO walls VALUES(4,'M2','study',1,0.0,316992,0);
INSERT INTO walls VALUES(4,'M2','study',2,270.0,238760,0);
INSERT INTO walls VALUES(4,'M2','study',3,0.0,195072,0);
INSERT INTO walls VALUES(4,'M2','study',4,270.0,298704,0);
INSERT INTO walls VALUES(4,'M2','study',5,180.0,514096,0);
INSERT INTO walls VALUES(4,'M2','study-closet',0,90.0,219456,0);
INSERT INTO walls VALUES(4,'M2','study-closet',1,0.0,176784,0);
INSERT INTO walls VALUES(4,'M2','study-closet',2,270.0,219456,0);
INSERT INTO walls VALUES(4,'M2','study-closet',3,180.0,176784,0);
INSERT INTO walls VALUES(5,'M1','bedroom',0,90.0,682752,0);
INSERT INTO walls VALUES(5,'M1','bedroom',1,0.0,552704,0);
INSERT INTO walls VALUES(5,'M1','bedroom',2,270.0,682752,0);
INSERT INTO walls VALUES(5,'M1','bedroom',3,180.0,552704,0);
INSERT INTO walls VALUES(5,'M1','bedroom-closet',0,90.0,105664,0);
INSERT INTO walls VALUES(5,'M1','bedroom-closet',1,0.0,243840,0);
INSERT INTO walls VALUES(5,'M1','bedroom-closet',2,270.0,105664,0);
INSERT INTO walls VALUES(5,'M1','bedroom-closet',3,180.0,243840,0);
INSERT INTO walls VALUES(5,'M1','box',0,90.0,390144,0);
INSERT INTO walls VALUES(5,'M1','box',1,0.0,341376,0);
INSERT INTO walls VALUES(5,'M1','box',2,270.0,390144,0);
INSERT INTO walls VALUES(5,'M1','box',3,180.0,341376,0);
INSERT INTO walls VALUES(5,'M1','dining',0,90.0,585216,0);
INSERT INTO walls VALUES(5,'M1','dining',1,0.0,146304,0);
INSERT INTO walls VALUES(5,'M1','dining',2,45.0,137922,0);
INSERT INTO walls VALUES(5,'M1','dining',3,0.0,170688,0);
INSERT INTO walls VALUES(5,'M1','dining',4,315.0,137922,0);
INSERT INTO walls VALUES(5,'M1','dining',5,0.0,146304,0);
INSERT INTO walls VALUES(5,'M1','dining',6,270.0,585216,0);
INSERT INTO walls VALUES(5,'M1','dining',7,180.0,658368,0);
INSERT INTO walls VALUES(5,'M1','garden',0,90.0,672000,0);
INSERT INTO walls VALUES(5,'M1','garden',1,0.0,496000,48000);
INSERT INTO walls VALUES(5,'M1','garden',2,270.0,672000,0);
INSERT INTO walls VALUES(5,'M1','garden',3,180.0,496000,0);
INSERT INTO walls VALUES(5,'M1','hall',0,90.0,219456,0);
INSERT INTO walls VALUES(5,'M1','hall',1,0.0,1170432,0);
INSERT INTO walls VALUES(5,'M1','hall',2,270.0,219456,0);
INSERT INTO walls VALUES(5,'M1','hall',3,180.0,1170432,0);
INSERT INTO walls VALUES(5,'M1','living',0,90.0,650240,0);
INSERT INTO walls VALUES(5,'M1','living',1,0.0,950976,0);
INSERT INTO walls VALUES(5,'M1','living',2,270.0,650240,0);
INSERT INTO walls VALUES(5,'M1','living',3,180.0,950976,0);
INSERT INTO walls VALUES(5,'M1','study',0,90.0,536448,0);
INSERT INTO walls VALUES(5,'M1','study',1,0.0,316992,0);
INSERT INTO walls VALUES(5,'M1','study',2,270.0,238760,0);
INSERT INTO walls VALUES(5,'M1','study',3,0.0,195072,0);
INSERT INTO walls VALUES(5,'M1','study',4,270.0,298704,0);
INSERT INTO walls VALUES(5,'M1','study',5,180.0,514096,0);
INSERT INTO walls VALUES(5,'M1','study-closet',0,90.0,219456,0);
INSERT INTO walls VALUES(5,'M1','study-closet',1,0.0,176784,0);
INSERT INTO walls VALUES(5,'M1','study-closet',2,270.0,219456,0);
INSERT INTO walls VALUES(5,'M1','study-closet',3,180.0,176784,0);
INSERT INTO walls VALUES(5,'M2','bedroom',0,90.0,682752,0);
INSERT INTO walls VALUES(5,'M2','bedroom',1,0.0,552704,0);
INSERT INTO walls VALUES(5,'M2','bedroom',2,270.0,682752,0);
INSERT INTO walls VALUES(5,'M2','bedroom',3,180.0,552704,0);
INSERT INTO walls VALUES(5,'M2','bedroom-closet',0,90.0,105664,0);
INSERT INTO walls VALUES(5,'M2','bedroom-closet',1,0.0,243840,0);
INSERT INTO walls VALUES(5,'M2','bedroom-closet',2,270.0,105664,0);
INSERT INTO walls VALUES(5,'M2','bedroom-closet',3,180.0,243840,0);
INSERT INTO walls VALUES(5,'M2','box',0,90.0,390144,0);
INSERT INTO walls VALUES(5,'M2','box',1,0.0,341376,0);
INSERT INTO walls VALUES(5,'M2','box',2,270.0,390144,0);
INSERT INTO walls VALUES(5,'M2','box',3,180.0,341376,0);
INSERT INTO walls VALUES(5,'M2','dining',0,90.0,585216,0);
INSERT INTO walls VALUES(5,'M2','dining',1,0.0,146304,0);
INSERT INTO walls VALUES(5,'M2','dining',2,45.0,137922,0);
INSERT INTO walls VALUES(5,'M2','dining',3,0.0,170688,0);
INSERT INTO walls VALUES(5,'M2','dining',4,315.0,137922,0);
INSERT INTO walls VALUES(5,'M2','dining',5,0.0,146304,0);
INSERT INTO walls VALUES(5,'M2','dining',6,270.0,585216,0);
INSERT INTO walls VALUES(5,'M2','dining',7,180.0,658368,0);
INSERT INTO walls VALUES(5,'M2','garden',0,90.0,672000,0);
INSERT INTO walls VALUES(5,'M2','garden',1,0.0,496000,48000);
INSERT INTO walls VALUES(5,'M2','garden',2,270.0,672000,0);
INSERT INTO walls VALUES(5,'M2','garden',3,180.0,496000,0);
INSERT INTO walls VALUES(5,'M2','hall',0,90.0,219456,0);
INSERT INTO walls VALUES(5,'M2','hall',1,0.0,1170432,0);
INSERT INTO walls VALUES(5,'M2','hall',2,270.0,219456,0);
INSERT INTO walls VALUES(5,'M2','hall',3,180.0,1170432,0);
INSERT INTO walls VALUES(5,'M2','living',0,90.0,662432,0);
INSERT INTO walls VALUES(5,'M2','living',1,0.0,950976,0);
INSERT INTO walls VALUES(5,'M2','living',2,270.0,662432,0);
INSERT INTO walls VALUES(5,'M2','living',3,180.0,950976,0);
INSERT INTO walls VALUES(5,'M2','study',0,90.0,536448,0);
INSERT INTO walls VALUES(5,'M2','study',1,0.0,316992,0);
INSERT INTO walls VALUES(5,'M2','study',2,270.0,238760,0);
INSERT INTO walls VALUES(5,'M2','study',3,0.0,195072,0);
INSERT INTO walls VALUES(5,'M2','study',4,270.0,298704,0);
INSERT INTO walls VALUES(5,'M2','study',5,180.0,514096,0);
INSERT INTO walls VALUES(5,'M2','study-closet',0,90.0,219456,0);
INSERT INTO walls VALUES(5,'M2','study-closet',1,0.0,176784,0);
INSERT INTO walls VALUES(5,'M2','study-closet',2,270.0,219456,0);
INSERT INTO walls VALUES(5,'M2','study-closet',3,180.0,176784,0);
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
  position INTEGER NOT NULL, name TEXT, kind TEXT NOT NULL DEFAULT 'other', diameter_ticks INTEGER NOT NULL DEFAULT 0, strip INTEGER NOT NULL DEFAULT 1 CHECK (strip IN (0, 1)), counted INTEGER NOT NULL DEFAULT 1 CHECK (counted IN (0, 1)),
  PRIMARY KEY (job, measure, room, position),
  FOREIGN KEY (job, measure, room) REFERENCES rooms (job, measure, id)
) STRICT, WITHOUT ROWID;
INSERT INTO cutouts VALUES(1,'M1','living',0,NULL,'other',0,1,1);
INSERT INTO cutouts VALUES(1,'M2','living',0,NULL,'other',0,1,1);
INSERT INTO cutouts VALUES(2,'M1','room 59d2bdb1',0,NULL,'other',0,1,1);
INSERT INTO cutouts VALUES(2,'M1','room 59d2bdb1',1,NULL,'other',0,1,1);
INSERT INTO cutouts VALUES(2,'M1','room 83e02851',0,NULL,'other',0,1,1);
INSERT INTO cutouts VALUES(4,'M1','living',0,NULL,'other',0,1,1);
INSERT INTO cutouts VALUES(4,'M2','living',0,NULL,'other',0,1,1);
INSERT INTO cutouts VALUES(5,'M1','living',0,'Old hearth','hearth',0,1,1);
INSERT INTO cutouts VALUES(5,'M2','living',0,'Old hearth','hearth',0,1,1);
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
INSERT INTO cutout_points VALUES(1,'M1','living',0,0,0,365760);
INSERT INTO cutout_points VALUES(1,'M1','living',0,1,73152,365760);
INSERT INTO cutout_points VALUES(1,'M1','living',0,2,73152,609600);
INSERT INTO cutout_points VALUES(1,'M1','living',0,3,0,609600);
INSERT INTO cutout_points VALUES(1,'M2','living',0,0,0,365760);
INSERT INTO cutout_points VALUES(1,'M2','living',0,1,73152,365760);
INSERT INTO cutout_points VALUES(1,'M2','living',0,2,73152,609600);
INSERT INTO cutout_points VALUES(1,'M2','living',0,3,0,609600);
INSERT INTO cutout_points VALUES(2,'M1','room 59d2bdb1',0,0,915835,994185);
INSERT INTO cutout_points VALUES(2,'M1','room 59d2bdb1',0,1,-199381,853518);
INSERT INTO cutout_points VALUES(2,'M1','room 59d2bdb1',0,2,205214,942382);
INSERT INTO cutout_points VALUES(2,'M1','room 59d2bdb1',0,3,-856033,280032);
INSERT INTO cutout_points VALUES(2,'M1','room 59d2bdb1',0,4,-247497,40656);
INSERT INTO cutout_points VALUES(2,'M1','room 59d2bdb1',0,5,-415915,-806293);
INSERT INTO cutout_points VALUES(2,'M1','room 59d2bdb1',1,0,-332510,-223659);
INSERT INTO cutout_points VALUES(2,'M1','room 59d2bdb1',1,1,519594,406641);
INSERT INTO cutout_points VALUES(2,'M1','room 83e02851',0,0,-651803,-334597);
INSERT INTO cutout_points VALUES(2,'M1','room 83e02851',0,1,-223407,599375);
INSERT INTO cutout_points VALUES(4,'M1','living',0,0,0,365760);
INSERT INTO cutout_points VALUES(4,'M1','living',0,1,73152,365760);
INSERT INTO cutout_points VALUES(4,'M1','living',0,2,73152,609600);
INSERT INTO cutout_points VALUES(4,'M1','living',0,3,0,609600);
INSERT INTO cutout_points VALUES(4,'M2','living',0,0,0,365760);
INSERT INTO cutout_points VALUES(4,'M2','living',0,1,73152,365760);
INSERT INTO cutout_points VALUES(4,'M2','living',0,2,73152,609600);
INSERT INTO cutout_points VALUES(4,'M2','living',0,3,0,609600);
INSERT INTO cutout_points VALUES(5,'M1','living',0,0,0,365760);
INSERT INTO cutout_points VALUES(5,'M1','living',0,1,73152,365760);
INSERT INTO cutout_points VALUES(5,'M1','living',0,2,73152,609600);
INSERT INTO cutout_points VALUES(5,'M1','living',0,3,0,609600);
INSERT INTO cutout_points VALUES(5,'M2','living',0,0,0,365760);
INSERT INTO cutout_points VALUES(5,'M2','living',0,1,73152,365760);
INSERT INTO cutout_points VALUES(5,'M2','living',0,2,73152,609600);
INSERT INTO cutout_points VALUES(5,'M2','living',0,3,0,609600);
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
INSERT INTO openings VALUES(1,'M1','bedroom','A1',2,'archway',3,158496,195072,18288,'none',0,'bedroom-closet','A1',NULL);
INSERT INTO openings VALUES(1,'M1','bedroom','D1',0,'door',0,48768,130048,36576,'in',0,'hall','D5',NULL);
INSERT INTO openings VALUES(1,'M1','bedroom','D2',1,'door',1,162560,130048,36576,'out',0,'garden','D1','door-bar');
INSERT INTO openings VALUES(1,'M1','bedroom','W1',3,'window',2,243840,195072,0,'none',0,NULL,NULL,NULL);
INSERT INTO openings VALUES(1,'M1','bedroom-closet','A1',0,'archway',1,24384,195072,18288,'none',0,'bedroom','A1',NULL);
INSERT INTO openings VALUES(1,'M1','box','D1',0,'door',1,30480,121920,18288,'in',0,'hall','D4',NULL);
INSERT INTO openings VALUES(1,'M1','box','W1',1,'window',3,121920,97536,0,'none',0,NULL,NULL,NULL);
INSERT INTO openings VALUES(1,'M1','dining','A1',0,'archway',7,170688,243840,18288,'none',0,'hall','A1',NULL);
INSERT INTO openings VALUES(1,'M1','dining','D1',1,'door',0,365760,130048,24384,'out',0,NULL,NULL,'oak-reducer');
INSERT INTO openings VALUES(1,'M1','dining','W1',2,'window',2,12192,113792,0,'none',0,NULL,NULL,NULL);
INSERT INTO openings VALUES(1,'M1','dining','W2',3,'window',3,12192,146304,0,'none',0,NULL,NULL,NULL);
INSERT INTO openings VALUES(1,'M1','dining','W3',4,'window',4,12192,113792,0,'none',0,NULL,NULL,NULL);
INSERT INTO openings VALUES(1,'M1','garden','D1',0,'door',3,203360,130080,36576,'in',0,'bedroom','D2','door-bar');
INSERT INTO openings VALUES(1,'M1','garden','W1',1,'window',1,64000,368000,0,'none',0,NULL,NULL,NULL);
INSERT INTO openings VALUES(1,'M1','hall','A1',2,'archway',1,243840,243840,18288,'none',0,'dining','A1',NULL);
INSERT INTO openings VALUES(1,'M1','hall','D1',0,'door',0,36576,146304,24384,'in',0,NULL,NULL,'oak-reducer');
INSERT INTO openings VALUES(1,'M1','hall','D2',1,'door',3,633984,130048,18288,'out',0,'living','D1',NULL);
INSERT INTO openings VALUES(1,'M1','hall','D3',3,'door',1,772160,121920,18288,'out',0,'study','D1',NULL);
INSERT INTO openings VALUES(1,'M1','hall','D4',4,'door',3,48768,121920,18288,'out',0,'box','D1',NULL);
INSERT INTO openings VALUES(1,'M1','hall','D5',5,'door',2,40640,130048,36576,'out',0,'bedroom','D1',NULL);
INSERT INTO openings VALUES(1,'M1','living','D1',0,'door',1,406400,130048,18288,'in',0,'hall','D2',NULL);
INSERT INTO openings VALUES(1,'M1','living','W1',1,'window',0,203200,243840,0,'none',0,NULL,NULL,NULL);
INSERT INTO openings VALUES(1,'M1','study','D1',0,'door',5,296672,121920,18288,'in',0,'hall','D3',NULL);
INSERT INTO openings VALUES(1,'M1','study','D2',1,'door',2,48768,121920,18288,'in',0,'study-closet','D1',NULL);
INSERT INTO openings VALUES(1,'M1','study','W1',2,'window',1,73152,170688,0,'none',0,NULL,NULL,NULL);
INSERT INTO openings VALUES(1,'M1','study-closet','D1',0,'door',0,48768,121920,18288,'none',0,'study','D2',NULL);
INSERT INTO openings VALUES(1,'M2','bedroom','A1',2,'archway',3,158496,195072,18288,'none',0,'bedroom-closet','A1',NULL);
INSERT INTO openings VALUES(1,'M2','bedroom','D1',0,'door',0,48768,130048,36576,'in',0,'hall','D5',NULL);
INSERT INTO openings VALUES(1,'M2','bedroom','D2',1,'door',1,162560,130048,36576,'out',0,'garden','D1','door-bar');
INSERT INTO openings VALUES(1,'M2','bedroom','W1',3,'window',2,243840,195072,0,'none',0,NULL,NULL,NULL);
INSERT INTO openings VALUES(1,'M2','bedroom-closet','A1',0,'archway',1,24384,195072,18288,'none',0,'bedroom','A1',NULL);
INSERT INTO openings VALUES(1,'M2','box','D1',0,'door',1,30480,121920,18288,'in',0,'hall','D4',NULL);
INSERT INTO openings VALUES(1,'M2','box','W1',1,'window',3,121920,97536,0,'none',0,NULL,NULL,NULL);
INSERT INTO openings VALUES(1,'M2','dining','A1',0,'archway',7,170688,243840,18288,'none',0,'hall','A1',NULL);
INSERT INTO openings VALUES(1,'M2','dining','D1',1,'door',0,365760,130048,24384,'out',0,NULL,NULL,'oak-reducer');
INSERT INTO openings VALUES(1,'M2','dining','W1',2,'window',2,12192,113792,0,'none',0,NULL,NULL,NULL);
INSERT INTO openings VALUES(1,'M2','dining','W2',3,'window',3,12192,146304,0,'none',0,NULL,NULL,NULL);
INSERT INTO openings VALUES(1,'M2','dining','W3',4,'window',4,12192,113792,0,'none',0,NULL,NULL,NULL);
INSERT INTO openings VALUES(1,'M2','garden','D1',0,'door',3,203360,130080,36576,'in',0,'bedroom','D2','door-bar');
INSERT INTO openings VALUES(1,'M2','garden','W1',1,'window',1,64000,368000,0,'none',0,NULL,NULL,NULL);
INSERT INTO openings VALUES(1,'M2','hall','A1',2,'archway',1,243840,243840,18288,'none',0,'dining','A1',NULL);
INSERT INTO openings VALUES(1,'M2','hall','D1',0,'door',0,36576,146304,24384,'in',0,NULL,NULL,'oak-reducer');
INSERT INTO openings VALUES(1,'M2','hall','D2',1,'door',3,633984,130048,18288,'out',0,'living','D1',NULL);
INSERT INTO openings VALUES(1,'M2','hall','D3',3,'door',1,772160,121920,18288,'out',0,'study','D1',NULL);
INSERT INTO openings VALUES(1,'M2','hall','D4',4,'door',3,48768,121920,18288,'out',0,'box','D1',NULL);
INSERT INTO openings VALUES(1,'M2','hall','D5',5,'door',2,40640,130048,36576,'out',0,'bedroom','D1',NULL);
INSERT INTO openings VALUES(1,'M2','living','D1',0,'door',1,406400,130048,18288,'in',0,'hall','D2',NULL);
INSERT INTO openings VALUES(1,'M2','living','W1',1,'window',0,203200,243840,0,'none',0,NULL,NULL,NULL);
INSERT INTO openings VALUES(1,'M2','study','D1',0,'door',5,296672,121920,18288,'in',0,'hall','D3',NULL);
INSERT INTO openings VALUES(1,'M2','study','D2',1,'door',2,48768,121920,18288,'in',0,'study-closet','D1',NULL);
INSERT INTO openings VALUES(1,'M2','study','W1',2,'window',1,73152,170688,0,'none',0,NULL,NULL,NULL);
INSERT INTO openings VALUES(1,'M2','study-closet','D1',0,'door',0,48768,121920,18288,'none',0,'study','D2',NULL);
INSERT INTO openings VALUES(2,'M1','room 59d2bdb1','D 7a1268d3',0,'door',4,600680,1725776,1158128,'none',0,'Señora Ibáñez, C/ Mayor 3, 2º izq.','Gull Cottage','½ in % _ * ? [x] \');
INSERT INTO openings VALUES(2,'M1','room 59d2bdb1','D bb9a412a',2,'door',4,456603,52242,53499,'out',0,'½ in % _ * ? [x] \','地毯店','0012');
INSERT INTO openings VALUES(2,'M1','room 59d2bdb1','D cc582f3b',1,'window',7,623596,627483,905541,'out',0,NULL,'地毯店',replace('two\nlines	and a tab','\n',char(10)));
INSERT INTO openings VALUES(2,'M1','room 59d2bdb1','D efadf3a7',3,'window',7,555042,1829357,530791,'none',1,'',replace('two\nlines	and a tab','\n',char(10)),'O''Shea & Sons; DROP TABLE jobs; --');
INSERT INTO openings VALUES(2,'M1','room 83cdcf75','D 04ad5857',1,'door',6,1949880,1553561,1237619,'in',1,'地毯店','0012','地毯店');
INSERT INTO openings VALUES(2,'M1','room 83cdcf75','D 5bb5a306',2,'archway',0,851021,430715,1162038,'in',0,'O''Shea & Sons; DROP TABLE jobs; --','Gull Cottage','Señora Ibáñez, C/ Mayor 3, 2º izq.');
INSERT INTO openings VALUES(2,'M1','room 83cdcf75','D 96510c68',3,'door',4,548644,614533,55247,'none',0,NULL,'O''Shea & Sons; DROP TABLE jobs; --','½ in % _ * ? [x] \');
INSERT INTO openings VALUES(2,'M1','room 83cdcf75','D d6260553',0,'window',5,1140204,935626,1517689,'in',0,'O''Shea & Sons; DROP TABLE jobs; --','0012',NULL);
INSERT INTO openings VALUES(2,'M1','room 83e02851','D 427ea1cd',0,'door',7,1487162,306115,697797,'none',0,'',replace('two\nlines	and a tab','\n',char(10)),'Gull Cottage');
INSERT INTO openings VALUES(2,'M1','room 83e02851','D 44f6aa1b',1,'door',6,1740529,137451,401280,'in',1,replace('two\nlines	and a tab','\n',char(10)),'Señora Ibáñez, C/ Mayor 3, 2º izq.',NULL);
INSERT INTO openings VALUES(4,'M1','bedroom','A1',2,'archway',3,158496,195072,18288,'none',0,'bedroom-closet','A1',NULL);
INSERT INTO openings VALUES(4,'M1','bedroom','D1',0,'door',0,48768,130048,36576,'in',0,'hall','D5',NULL);
INSERT INTO openings VALUES(4,'M1','bedroom','D2',1,'door',1,162560,130048,36576,'out',0,'garden','D1','door-bar');
INSERT INTO openings VALUES(4,'M1','bedroom','W1',3,'window',2,243840,195072,0,'none',0,NULL,NULL,NULL);
INSERT INTO openings VALUES(4,'M1','bedroom-closet','A1',0,'archway',1,24384,195072,18288,'none',0,'bedroom','A1',NULL);
INSERT INTO openings VALUES(4,'M1','box','D1',0,'door',1,30480,121920,18288,'in',0,'hall','D4',NULL);
INSERT INTO openings VALUES(4,'M1','box','W1',1,'window',3,121920,97536,0,'none',0,NULL,NULL,NULL);
INSERT INTO openings VALUES(4,'M1','dining','A1',0,'archway',7,170688,243840,18288,'none',0,'hall','A1',NULL);
INSERT INTO openings VALUES(4,'M1','dining','D1',1,'door',0,365760,130048,24384,'out',0,NULL,NULL,'oak-reducer');
INSERT INTO openings VALUES(4,'M1','dining','W1',2,'window',2,12192,113792,0,'none',0,NULL,NULL,NULL);
INSERT INTO openings VALUES(4,'M1','dining','W2',3,'window',3,12192,146304,0,'none',0,NULL,NULL,NULL);
INSERT INTO openings VALUES(4,'M1','dining','W3',4,'window',4,12192,113792,0,'none',0,NULL,NULL,NULL);
INSERT INTO openings VALUES(4,'M1','garden','D1',0,'door',3,203360,130080,36576,'in',0,'bedroom','D2','door-bar');
INSERT INTO openings VALUES(4,'M1','garden','W1',1,'window',1,64000,368000,0,'none',0,NULL,NULL,NULL);
INSERT INTO openings VALUES(4,'M1','hall','A1',2,'archway',1,243840,243840,18288,'none',0,'dining','A1',NULL);
INSERT INTO openings VALUES(4,'M1','hall','D1',0,'door',0,36576,146304,24384,'in',0,NULL,NULL,'oak-reducer');
INSERT INTO openings VALUES(4,'M1','hall','D2',1,'door',3,633984,130048,18288,'out',0,'living','D1',NULL);
INSERT INTO openings VALUES(4,'M1','hall','D3',3,'door',1,772160,121920,18288,'out',0,'study','D1',NULL);
INSERT INTO openings VALUES(4,'M1','hall','D4',4,'door',3,48768,121920,18288,'out',0,'box','D1',NULL);
INSERT INTO openings VALUES(4,'M1','hall','D5',5,'door',2,40640,130048,36576,'out',0,'bedroom','D1',NULL);
INSERT INTO openings VALUES(4,'M1','living','D1',0,'door',1,406400,130048,18288,'in',0,'hall','D2',NULL);
INSERT INTO openings VALUES(4,'M1','living','W1',1,'window',0,203200,243840,0,'none',0,NULL,NULL,NULL);
INSERT INTO openings VALUES(4,'M1','study','D1',0,'door',5,296672,121920,18288,'in',0,'hall','D3',NULL);
INSERT INTO openings VALUES(4,'M1','study','D2',1,'door',2,48768,121920,18288,'in',0,'study-closet','D1',NULL);
INSERT INTO openings VALUES(4,'M1','study','W1',2,'window',1,73152,170688,0,'none',0,NULL,NULL,NULL);
INSERT INTO openings VALUES(4,'M1','study-closet','D1',0,'door',0,48768,121920,18288,'none',0,'study','D2',NULL);
INSERT INTO openings VALUES(4,'M2','bedroom','A1',2,'archway',3,158496,195072,18288,'none',0,'bedroom-closet','A1',NULL);
INSERT INTO openings VALUES(4,'M2','bedroom','D1',0,'door',0,48768,130048,36576,'in',0,'hall','D5',NULL);
INSERT INTO openings VALUES(4,'M2','bedroom','D2',1,'door',1,162560,130048,36576,'out',0,'garden','D1','door-bar');
INSERT INTO openings VALUES(4,'M2','bedroom','W1',3,'window',2,243840,195072,0,'none',0,NULL,NULL,NULL);
INSERT INTO openings VALUES(4,'M2','bedroom-closet','A1',0,'archway',1,24384,195072,18288,'none',0,'bedroom','A1',NULL);
INSERT INTO openings VALUES(4,'M2','box','D1',0,'door',1,30480,121920,18288,'in',0,'hall','D4',NULL);
INSERT INTO openings VALUES(4,'M2','box','W1',1,'window',3,121920,97536,0,'none',0,NULL,NULL,NULL);
INSERT INTO openings VALUES(4,'M2','dining','A1',0,'archway',7,170688,243840,18288,'none',0,'hall','A1',NULL);
INSERT INTO openings VALUES(4,'M2','dining','D1',1,'door',0,365760,130048,24384,'out',0,NULL,NULL,'oak-reducer');
INSERT INTO openings VALUES(4,'M2','dining','W1',2,'window',2,12192,113792,0,'none',0,NULL,NULL,NULL);
INSERT INTO openings VALUES(4,'M2','dining','W2',3,'window',3,12192,146304,0,'none',0,NULL,NULL,NULL);
INSERT INTO openings VALUES(4,'M2','dining','W3',4,'window',4,12192,113792,0,'none',0,NULL,NULL,NULL);
INSERT INTO openings VALUES(4,'M2','garden','D1',0,'door',3,203360,130080,36576,'in',0,'bedroom','D2','door-bar');
INSERT INTO openings VALUES(4,'M2','garden','W1',1,'window',1,64000,368000,0,'none',0,NULL,NULL,NULL);
INSERT INTO openings VALUES(4,'M2','hall','A1',2,'archway',1,243840,243840,18288,'none',0,'dining','A1',NULL);
INSERT INTO openings VALUES(4,'M2','hall','D1',0,'door',0,36576,146304,24384,'in',0,NULL,NULL,'oak-reducer');
INSERT INTO openings VALUES(4,'M2','hall','D2',1,'door',3,633984,130048,18288,'out',0,'living','D1',NULL);
INSERT INTO openings VALUES(4,'M2','hall','D3',3,'door',1,772160,121920,18288,'out',0,'study','D1',NULL);
INSERT INTO openings VALUES(4,'M2','hall','D4',4,'door',3,48768,121920,18288,'out',0,'box','D1',NULL);
INSERT INTO openings VALUES(4,'M2','hall','D5',5,'door',2,40640,130048,36576,'out',0,'bedroom','D1',NULL);
INSERT INTO openings VALUES(4,'M2','living','D1',0,'door',1,406400,130048,18288,'in',0,'hall','D2',NULL);
INSERT INTO openings VALUES(4,'M2','living','W1',1,'window',0,203200,243840,0,'none',0,NULL,NULL,NULL);
INSERT INTO openings VALUES(4,'M2','study','D1',0,'door',5,296672,121920,18288,'in',0,'hall','D3',NULL);
INSERT INTO openings VALUES(4,'M2','study','D2',1,'door',2,48768,121920,18288,'in',0,'study-closet','D1',NULL);
INSERT INTO openings VALUES(4,'M2','study','W1',2,'window',1,73152,170688,0,'none',0,NULL,NULL,NULL);
INSERT INTO openings VALUES(4,'M2','study-closet','D1',0,'door',0,48768,121920,18288,'none',0,'study','D2',NULL);
INSERT INTO openings VALUES(5,'M1','bedroom','A1',2,'archway',3,158496,195072,18288,'none',0,'bedroom-closet','A1',NULL);
INSERT INTO openings VALUES(5,'M1','bedroom','D1',0,'door',0,48768,130048,36576,'in',0,'hall','D5',NULL);
INSERT INTO openings VALUES(5,'M1','bedroom','D2',1,'door',1,162560,130048,36576,'out',0,'garden','D1','door-bar');
INSERT INTO openings VALUES(5,'M1','bedroom','W1',3,'window',2,243840,195072,0,'none',0,NULL,NULL,NULL);
INSERT INTO openings VALUES(5,'M1','bedroom-closet','A1',0,'archway',1,24384,195072,18288,'none',0,'bedroom','A1',NULL);
INSERT INTO openings VALUES(5,'M1','box','D1',0,'door',1,30480,121920,18288,'in',0,'hall','D4',NULL);
INSERT INTO openings VALUES(5,'M1','box','W1',1,'window',3,121920,97536,0,'none',0,NULL,NULL,NULL);
INSERT INTO openings VALUES(5,'M1','dining','A1',0,'archway',7,170688,243840,18288,'none',0,'hall','A1',NULL);
INSERT INTO openings VALUES(5,'M1','dining','D1',1,'door',0,365760,130048,24384,'out',0,NULL,NULL,'oak-reducer');
INSERT INTO openings VALUES(5,'M1','dining','W1',2,'window',2,12192,113792,0,'none',0,NULL,NULL,NULL);
INSERT INTO openings VALUES(5,'M1','dining','W2',3,'window',3,12192,146304,0,'none',0,NULL,NULL,NULL);
INSERT INTO openings VALUES(5,'M1','dining','W3',4,'window',4,12192,113792,0,'none',0,NULL,NULL,NULL);
INSERT INTO openings VALUES(5,'M1','garden','D1',0,'door',3,203360,130080,36576,'in',0,'bedroom','D2','door-bar');
INSERT INTO openings VALUES(5,'M1','garden','W1',1,'window',1,64000,368000,0,'none',0,NULL,NULL,NULL);
INSERT INTO openings VALUES(5,'M1','hall','A1',2,'archway',1,243840,243840,18288,'none',0,'dining','A1',NULL);
INSERT INTO openings VALUES(5,'M1','hall','D1',0,'door',0,36576,146304,24384,'in',0,NULL,NULL,'oak-reducer');
INSERT INTO openings VALUES(5,'M1','hall','D2',1,'door',3,633984,130048,18288,'out',0,'living','D1',NULL);
INSERT INTO openings VALUES(5,'M1','hall','D3',3,'door',1,772160,121920,18288,'out',0,'study','D1',NULL);
INSERT INTO openings VALUES(5,'M1','hall','D4',4,'door',3,48768,121920,18288,'out',0,'box','D1',NULL);
INSERT INTO openings VALUES(5,'M1','hall','D5',5,'door',2,40640,130048,36576,'out',0,'bedroom','D1',NULL);
INSERT INTO openings VALUES(5,'M1','living','D1',0,'door',1,406400,130048,18288,'in',0,'hall','D2',NULL);
INSERT INTO openings VALUES(5,'M1','living','W1',1,'window',0,203200,243840,0,'none',0,NULL,NULL,NULL);
INSERT INTO openings VALUES(5,'M1','study','D1',0,'door',5,296672,121920,18288,'in',0,'hall','D3',NULL);
INSERT INTO openings VALUES(5,'M1','study','D2',1,'door',2,48768,121920,18288,'in',0,'study-closet','D1',NULL);
INSERT INTO openings VALUES(5,'M1','study','W1',2,'window',1,73152,170688,0,'none',0,NULL,NULL,NULL);
INSERT INTO openings VALUES(5,'M1','study-closet','D1',0,'door',0,48768,121920,18288,'none',0,'study','D2',NULL);
INSERT INTO openings VALUES(5,'M2','bedroom','A1',2,'archway',3,158496,195072,18288,'none',0,'bedroom-closet','A1',NULL);
INSERT INTO openings VALUES(5,'M2','bedroom','D1',0,'door',0,48768,130048,36576,'in',0,'hall','D5',NULL);
INSERT INTO openings VALUES(5,'M2','bedroom','D2',1,'door',1,162560,130048,36576,'out',0,'garden','D1','door-bar');
INSERT INTO openings VALUES(5,'M2','bedroom','W1',3,'window',2,243840,195072,0,'none',0,NULL,NULL,NULL);
INSERT INTO openings VALUES(5,'M2','bedroom-closet','A1',0,'archway',1,24384,195072,18288,'none',0,'bedroom','A1',NULL);
INSERT INTO openings VALUES(5,'M2','box','D1',0,'door',1,30480,121920,18288,'in',0,'hall','D4',NULL);
INSERT INTO openings VALUES(5,'M2','box','W1',1,'window',3,121920,97536,0,'none',0,NULL,NULL,NULL);
INSERT INTO openings VALUES(5,'M2','dining','A1',0,'archway',7,170688,243840,18288,'none',0,'hall','A1',NULL);
INSERT INTO openings VALUES(5,'M2','dining','D1',1,'door',0,365760,130048,24384,'out',0,NULL,NULL,'oak-reducer');
INSERT INTO openings VALUES(5,'M2','dining','W1',2,'window',2,12192,113792,0,'none',0,NULL,NULL,NULL);
INSERT INTO openings VALUES(5,'M2','dining','W2',3,'window',3,12192,146304,0,'none',0,NULL,NULL,NULL);
INSERT INTO openings VALUES(5,'M2','dining','W3',4,'window',4,12192,113792,0,'none',0,NULL,NULL,NULL);
INSERT INTO openings VALUES(5,'M2','garden','D1',0,'door',3,203360,130080,36576,'in',0,'bedroom','D2','door-bar');
INSERT INTO openings VALUES(5,'M2','garden','W1',1,'window',1,64000,368000,0,'none',0,NULL,NULL,NULL);
INSERT INTO openings VALUES(5,'M2','hall','A1',2,'archway',1,243840,243840,18288,'none',0,'dining','A1',NULL);
INSERT INTO openings VALUES(5,'M2','hall','D1',0,'door',0,36576,146304,24384,'in',0,NULL,NULL,'oak-reducer');
INSERT INTO openings VALUES(5,'M2','hall','D2',1,'door',3,633984,130048,18288,'out',0,'living','D1',NULL);
INSERT INTO openings VALUES(5,'M2','hall','D3',3,'door',1,772160,121920,18288,'out',0,'study','D1',NULL);
INSERT INTO openings VALUES(5,'M2','hall','D4',4,'door',3,48768,121920,18288,'out',0,'box','D1',NULL);
INSERT INTO openings VALUES(5,'M2','hall','D5',5,'door',2,40640,130048,36576,'out',0,'bedroom','D1',NULL);
INSERT INTO openings VALUES(5,'M2','living','D1',0,'door',1,406400,130048,18288,'in',0,'hall','D2',NULL);
INSERT INTO openings VALUES(5,'M2','living','W1',1,'window',0,203200,243840,0,'none',0,NULL,NULL,NULL);
INSERT INTO openings VALUES(5,'M2','study','D1',0,'door',5,296672,121920,18288,'in',0,'hall','D3',NULL);
INSERT INTO openings VALUES(5,'M2','study','D2',1,'door',2,48768,121920,18288,'in',0,'study-closet','D1',NULL);
INSERT INTO openings VALUES(5,'M2','study','W1',2,'window',1,73152,170688,0,'none',0,NULL,NULL,NULL);
INSERT INTO openings VALUES(5,'M2','study-closet','D1',0,'door',0,48768,121920,18288,'none',0,'study','D2',NULL);
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
  turn TEXT NOT NULL DEFAULT 'straight',
  turn_after INTEGER NOT NULL DEFAULT 0,
  winders INTEGER NOT NULL DEFAULT 0,
  turn_going_ticks INTEGER NOT NULL DEFAULT 0,
  turn_width_ticks INTEGER NOT NULL DEFAULT 0,
  piece_extra_ticks INTEGER NOT NULL DEFAULT 8128, bend TEXT NOT NULL DEFAULT 'left', placed INTEGER NOT NULL DEFAULT 0 CHECK (placed IN (0, 1)), floor INTEGER NOT NULL DEFAULT 0, at_x_ticks INTEGER NOT NULL DEFAULT 0, at_y_ticks INTEGER NOT NULL DEFAULT 0, bearing_degrees INTEGER NOT NULL DEFAULT 0,
  PRIMARY KEY (job, measure, id),
  FOREIGN KEY (job, measure) REFERENCES measures (job, id)
) STRICT, WITHOUT ROWID;
INSERT INTO stairs VALUES(1,'M1','attic-stair',0,'Attic stair',9,31496,38608,134112,'cap-and-band',4064,24384,10160,'fennel-twist-oat','dovecote-cushion','Closed strings both sides; carpet full width.','whole-flight',0,0,'winders',6,3,113792,170688,8128,'left',0,0,0,0,0);
INSERT INTO stairs VALUES(1,'M2','attic-stair',0,'Attic stair',9,31496,38608,134112,'cap-and-band',4064,24384,10160,'fennel-twist-oat','dovecote-cushion','Closed strings both sides; carpet full width.','whole-flight',0,0,'winders',6,3,113792,170688,8128,'left',0,0,0,0,0);
INSERT INTO stairs VALUES(2,'M1','stair 79bcec08',1,'Gull Cottage',5,1886856,1985601,1159733,'waterfall',587664,611750,1883428,'地毯店',NULL,NULL,'whole-flight',1062973,1996758,'straight',13,0,709360,1627463,0,'left',0,0,0,0,0);
INSERT INTO stairs VALUES(2,'M1','stair 86967455',0,NULL,7,174974,1711979,714562,'waterfall',199933,389634,118377,'"quoted" and ''quoted''','0012','','whole-flight',1387446,1848076,'straight',9,3,1559881,22334,1620362,'left',0,0,0,0,0);
INSERT INTO stairs VALUES(4,'M1','attic-stair',0,'Attic stair',9,31496,38608,134112,'cap-and-band',4064,24384,10160,'fennel-twist-oat','dovecote-cushion','Closed strings both sides; carpet full width.','whole-flight',0,0,'winders',6,3,113792,170688,8128,'left',0,0,0,0,0);
INSERT INTO stairs VALUES(4,'M2','attic-stair',0,'Attic stair',9,31496,38608,134112,'cap-and-band',4064,24384,10160,'fennel-twist-oat','dovecote-cushion','Closed strings both sides; carpet full width.','whole-flight',0,0,'winders',6,3,113792,170688,8128,'left',0,0,0,0,0);
INSERT INTO stairs VALUES(5,'M1','attic-stair',0,'Attic stair',9,31496,38608,134112,'cap-and-band',4064,24384,10160,'fennel-twist-oat','dovecote-cushion','Closed strings both sides; carpet full width.','whole-flight',0,0,'winders',6,3,113792,170688,8128,'right',1,0,-975360,146304,90);
INSERT INTO stairs VALUES(5,'M2','attic-stair',0,'Attic stair',9,31496,38608,134112,'cap-and-band',4064,24384,10160,'fennel-twist-oat','dovecote-cushion','Closed strings both sides; carpet full width.','whole-flight',0,0,'winders',6,3,113792,170688,8128,'right',1,0,-975360,146304,90);
INSERT INTO stairs VALUES(6,'M1','cellar',1,'Cellar stair',9,30480,40640,146304,'waterfall',4064,24384,10160,'cord',NULL,NULL,'whole-flight',0,0,'straight',0,0,0,0,8128,'left',0,0,0,0,0);
INSERT INTO stairs VALUES(6,'M1','stair',0,'Stair',13,30480,40640,146304,'waterfall',4064,24384,10160,'cord',NULL,NULL,'whole-flight',0,0,'straight',0,0,0,0,8128,'left',0,0,0,0,0);
INSERT INTO stairs VALUES(7,'M1','cellar',1,'Cellar stair',9,30480,40640,146304,'waterfall',4064,24384,10160,'cord',NULL,NULL,'whole-flight',0,0,'straight',0,0,0,0,8128,'left',0,0,0,0,0);
INSERT INTO stairs VALUES(7,'M1','stair',0,'Stair',13,30480,40640,146304,'waterfall',4064,24384,10160,'cord',NULL,NULL,'whole-flight',0,0,'straight',0,0,0,0,8128,'left',0,0,0,0,0);
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
  seam_line_pinned INTEGER NOT NULL CHECK (seam_line_pinned IN (0, 1)),
  seam_line_ticks INTEGER NOT NULL,
  PRIMARY KEY (job, measure, id),
  FOREIGN KEY (job, measure) REFERENCES measures (job, id)
) STRICT, WITHOUT ROWID;
INSERT INTO areas VALUES(1,'M1','bedroom',3,'Back bedroom','quillstone-saxony-slate','dovecote-cushion','stretch',-1,NULL,0,0);
INSERT INTO areas VALUES(1,'M1','box',2,'Box room','quillstone-saxony-slate','dovecote-cushion','stretch',-1,NULL,0,0);
INSERT INTO areas VALUES(1,'M1','garden',4,'Garden room','brackenholm-loop-rust',NULL,'glue',-1,NULL,0,0);
INSERT INTO areas VALUES(1,'M1','ground',0,'Hall, living and dining','fennel-twist-oat','dovecote-cushion','stretch',-1,NULL,0,0);
INSERT INTO areas VALUES(1,'M1','study',1,'Study','marlfield-trellis-moss','dovecote-cushion','stretch',-1,NULL,0,0);
INSERT INTO areas VALUES(1,'M2','bedroom',3,'Back bedroom','quillstone-saxony-slate','dovecote-cushion','stretch',-1,NULL,0,0);
INSERT INTO areas VALUES(1,'M2','box',2,'Box room','quillstone-saxony-slate','dovecote-cushion','stretch',-1,NULL,0,0);
INSERT INTO areas VALUES(1,'M2','garden',4,'Garden room','brackenholm-loop-rust',NULL,'glue',-1,NULL,0,0);
INSERT INTO areas VALUES(1,'M2','ground',0,'Hall, living and dining','fennel-twist-oat','dovecote-cushion','stretch',-1,NULL,0,0);
INSERT INTO areas VALUES(1,'M2','study',1,'Study','marlfield-trellis-moss','dovecote-cushion','stretch',-1,NULL,0,0);
INSERT INTO areas VALUES(2,'M1','area 5899e368',0,'地毯店','½ in % _ * ? [x] \','地毯店','glue',18,'0012',0,777334);
INSERT INTO areas VALUES(4,'M1','bedroom',3,'Back bedroom','quillstone-saxony-slate','dovecote-cushion','stretch',-1,NULL,0,0);
INSERT INTO areas VALUES(4,'M1','box',2,'Box room','quillstone-saxony-slate','dovecote-cushion','stretch',-1,NULL,0,0);
INSERT INTO areas VALUES(4,'M1','garden',4,'Garden room','brackenholm-loop-rust',NULL,'glue',-1,NULL,0,0);
INSERT INTO areas VALUES(4,'M1','ground',0,'Hall, living and dining','fennel-twist-oat','dovecote-cushion','stretch',-1,NULL,0,0);
INSERT INTO areas VALUES(4,'M1','study',1,'Study','marlfield-trellis-moss','dovecote-cushion','stretch',-1,NULL,0,0);
INSERT INTO areas VALUES(4,'M2','bedroom',3,'Back bedroom','quillstone-saxony-slate','dovecote-cushion','stretch',-1,NULL,0,0);
INSERT INTO areas VALUES(4,'M2','box',2,'Box room','quillstone-saxony-slate','dovecote-cushion','stretch',-1,NULL,0,0);
INSERT INTO areas VALUES(4,'M2','garden',4,'Garden room','brackenholm-loop-rust',NULL,'glue',-1,NULL,0,0);
INSERT INTO areas VALUES(4,'M2','ground',0,'Hall, living and dining','fennel-twist-oat','dovecote-cushion','stretch',-1,NULL,0,0);
INSERT INTO areas VALUES(4,'M2','study',1,'Study','marlfield-trellis-moss','dovecote-cushion','stretch',-1,NULL,0,0);
INSERT INTO areas VALUES(5,'M1','bedroom',3,'Back bedroom','quillstone-saxony-slate','dovecote-cushion','stretch',-1,NULL,0,0);
INSERT INTO areas VALUES(5,'M1','box',2,'Box room','quillstone-saxony-slate','dovecote-cushion','stretch',-1,NULL,0,0);
INSERT INTO areas VALUES(5,'M1','garden',4,'Garden room','brackenholm-loop-rust',NULL,'glue',-1,NULL,0,0);
INSERT INTO areas VALUES(5,'M1','ground',0,'Hall, living and dining','fennel-twist-oat','dovecote-cushion','stretch',-1,NULL,0,0);
INSERT INTO areas VALUES(5,'M1','study',1,'Study','marlfield-trellis-moss','dovecote-cushion','stretch',-1,NULL,0,0);
INSERT INTO areas VALUES(5,'M2','bedroom',3,'Back bedroom','quillstone-saxony-slate','dovecote-cushion','stretch',-1,NULL,0,0);
INSERT INTO areas VALUES(5,'M2','box',2,'Box room','quillstone-saxony-slate','dovecote-cushion','stretch',-1,NULL,0,0);
INSERT INTO areas VALUES(5,'M2','garden',4,'Garden room','brackenholm-loop-rust',NULL,'glue',-1,NULL,0,0);
INSERT INTO areas VALUES(5,'M2','ground',0,'Hall, living and dining','fennel-twist-oat','dovecote-cushion','stretch',-1,NULL,0,0);
INSERT INTO areas VALUES(5,'M2','study',1,'Study','marlfield-trellis-moss','dovecote-cushion','stretch',-1,NULL,0,0);
CREATE TABLE area_rooms (
  job INTEGER NOT NULL,
  measure TEXT NOT NULL,
  area TEXT NOT NULL,
  position INTEGER NOT NULL,
  room TEXT NOT NULL,
  PRIMARY KEY (job, measure, area, position),
  FOREIGN KEY (job, measure, area) REFERENCES areas (job, measure, id)
) STRICT, WITHOUT ROWID;
INSERT INTO area_rooms VALUES(1,'M1','bedroom',0,'bedroom');
INSERT INTO area_rooms VALUES(1,'M1','bedroom',1,'bedroom-closet');
INSERT INTO area_rooms VALUES(1,'M1','box',0,'box');
INSERT INTO area_rooms VALUES(1,'M1','garden',0,'garden');
INSERT INTO area_rooms VALUES(1,'M1','ground',0,'hall');
INSERT INTO area_rooms VALUES(1,'M1','ground',1,'living');
INSERT INTO area_rooms VALUES(1,'M1','ground',2,'dining');
INSERT INTO area_rooms VALUES(1,'M1','study',0,'study');
INSERT INTO area_rooms VALUES(1,'M1','study',1,'study-closet');
INSERT INTO area_rooms VALUES(1,'M2','bedroom',0,'bedroom');
INSERT INTO area_rooms VALUES(1,'M2','bedroom',1,'bedroom-closet');
INSERT INTO area_rooms VALUES(1,'M2','box',0,'box');
INSERT INTO area_rooms VALUES(1,'M2','garden',0,'garden');
INSERT INTO area_rooms VALUES(1,'M2','ground',0,'hall');
INSERT INTO area_rooms VALUES(1,'M2','ground',1,'living');
INSERT INTO area_rooms VALUES(1,'M2','ground',2,'dining');
INSERT INTO area_rooms VALUES(1,'M2','study',0,'study');
INSERT INTO area_rooms VALUES(1,'M2','study',1,'study-closet');
INSERT INTO area_rooms VALUES(2,'M1','area 5899e368',0,'room 83e02851');
INSERT INTO area_rooms VALUES(2,'M1','area 5899e368',1,'room 83cdcf75');
INSERT INTO area_rooms VALUES(4,'M1','bedroom',0,'bedroom');
INSERT INTO area_rooms VALUES(4,'M1','bedroom',1,'bedroom-closet');
INSERT INTO area_rooms VALUES(4,'M1','box',0,'box');
INSERT INTO area_rooms VALUES(4,'M1','garden',0,'garden');
INSERT INTO area_rooms VALUES(4,'M1','ground',0,'hall');
INSERT INTO area_rooms VALUES(4,'M1','ground',1,'living');
INSERT INTO area_rooms VALUES(4,'M1','ground',2,'dining');
INSERT INTO area_rooms VALUES(4,'M1','study',0,'study');
INSERT INTO area_rooms VALUES(4,'M1','study',1,'study-closet');
INSERT INTO area_rooms VALUES(4,'M2','bedroom',0,'bedroom');
INSERT INTO area_rooms VALUES(4,'M2','bedroom',1,'bedroom-closet');
INSERT INTO area_rooms VALUES(4,'M2','box',0,'box');
INSERT INTO area_rooms VALUES(4,'M2','garden',0,'garden');
INSERT INTO area_rooms VALUES(4,'M2','ground',0,'hall');
INSERT INTO area_rooms VALUES(4,'M2','ground',1,'living');
INSERT INTO area_rooms VALUES(4,'M2','ground',2,'dining');
INSERT INTO area_rooms VALUES(4,'M2','study',0,'study');
INSERT INTO area_rooms VALUES(4,'M2','study',1,'study-closet');
INSERT INTO area_rooms VALUES(5,'M1','bedroom',0,'bedroom');
INSERT INTO area_rooms VALUES(5,'M1','bedroom',1,'bedroom-closet');
INSERT INTO area_rooms VALUES(5,'M1','box',0,'box');
INSERT INTO area_rooms VALUES(5,'M1','garden',0,'garden');
INSERT INTO area_rooms VALUES(5,'M1','ground',0,'hall');
INSERT INTO area_rooms VALUES(5,'M1','ground',1,'living');
INSERT INTO area_rooms VALUES(5,'M1','ground',2,'dining');
INSERT INTO area_rooms VALUES(5,'M1','study',0,'study');
INSERT INTO area_rooms VALUES(5,'M1','study',1,'study-closet');
INSERT INTO area_rooms VALUES(5,'M2','bedroom',0,'bedroom');
INSERT INTO area_rooms VALUES(5,'M2','bedroom',1,'bedroom-closet');
INSERT INTO area_rooms VALUES(5,'M2','box',0,'box');
INSERT INTO area_rooms VALUES(5,'M2','garden',0,'garden');
INSERT INTO area_rooms VALUES(5,'M2','ground',0,'hall');
INSERT INTO area_rooms VALUES(5,'M2','ground',1,'living');
INSERT INTO area_rooms VALUES(5,'M2','ground',2,'dining');
INSERT INTO area_rooms VALUES(5,'M2','study',0,'study');
INSERT INTO area_rooms VALUES(5,'M2','study',1,'study-closet');
CREATE TABLE job_states (
  job INTEGER NOT NULL REFERENCES jobs,
  state TEXT NOT NULL,
  reached TEXT NOT NULL,
  PRIMARY KEY (job, state)
) STRICT, WITHOUT ROWID;
INSERT INTO job_states VALUES(2,'accepted','2026-04-13');
INSERT INTO job_states VALUES(2,'enquiry','2026-01-10');
INSERT INTO job_states VALUES(2,'fitted','2026-07-16');
INSERT INTO job_states VALUES(2,'ordered','2026-05-14');
INSERT INTO job_states VALUES(2,'quoted','2026-03-12');
INSERT INTO job_states VALUES(4,'enquiry','2026-11-26');
INSERT INTO job_states VALUES(7,'enquiry','2026-11-26');
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
INSERT INTO attachments VALUES(2,'F-f28a560b',0,'O''Shea & Sons <b>; --',NULL,'digest-fcc002d2','With the order','2026-03-04');
CREATE TABLE offers (
  job INTEGER NOT NULL PRIMARY KEY REFERENCES jobs,
  discount_ppm INTEGER NOT NULL,
  discount_minor INTEGER NOT NULL,
  detail TEXT NOT NULL,
  valid_days INTEGER NOT NULL,
  terms TEXT,
  tax_area TEXT
) STRICT;
INSERT INTO offers VALUES(2,431458,73550,'full',13,'O''Shea & Sons <b>; --',NULL);
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
INSERT INTO offer_extras VALUES(2,'X-260fa6d6',0,'work-03638093',' x ',6617408,'sq yd',49508,91682,1);
CREATE TABLE offer_payments (
  job INTEGER NOT NULL REFERENCES jobs,
  position INTEGER NOT NULL,
  name TEXT,
  part_ppm INTEGER NOT NULL,
  days INTEGER NOT NULL,
  PRIMARY KEY (job, position)
) STRICT, WITHOUT ROWID;
INSERT INTO offer_payments VALUES(2,0,'With the order',198328,45);
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
INSERT INTO pins VALUES(2,'M1','area 5899e368',0,'no-seams','地毯店','"quoted" and ''quoted''');
INSERT INTO pins VALUES(2,'M1','area 5899e368',1,'roll','"quoted" and ''quoted''',replace('two\nlines	and a tab','\n',char(10)));
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
INSERT INTO pin_points VALUES(2,'M1','area 5899e368',1,0,87565,285078);
INSERT INTO pin_points VALUES(2,'M1','area 5899e368',1,1,0,947903);
INSERT INTO pin_points VALUES(2,'M1','area 5899e368',1,2,1499758,1311796);
INSERT INTO pin_points VALUES(2,'M1','area 5899e368',1,3,1499978,1145603);
CREATE TABLE revisions (
  job INTEGER NOT NULL PRIMARY KEY REFERENCES jobs,
  revision INTEGER NOT NULL UNIQUE,
  changed TEXT NOT NULL
) STRICT;
INSERT INTO revisions VALUES(1,7,'2026-11-26T00:32:33Z');
INSERT INTO revisions VALUES(2,4,'2026-03-05T09:31:00Z');
INSERT INTO revisions VALUES(4,8,'2026-11-26T03:59:27Z');
INSERT INTO revisions VALUES(5,10,'2026-11-26T03:59:46Z');
INSERT INTO revisions VALUES(6,14,'2026-11-26T17:30:24Z');
INSERT INTO revisions VALUES(7,15,'2026-11-26T17:30:24Z');
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
INSERT INTO steps VALUES('J-2',1,'Edit','2026-03-05T09:31:00Z',1,0,X'540a010000000000000000006a6f627300170001000000000000000200000313c2bd20696e2025205f202a203f205b785d205c000000000000000000030d486172626f757220486f75736500000000000054070102030400000077616c6c7300120001000000000000000203024d31030d726f6f6d203934376232373735010000000000000003020000000000000000010000000000000000010000000000000000');
INSERT INTO steps VALUES('J-3',1,'Edit','2026-03-05T09:31:00Z',0,0,X'540a010000000000000000006a6f6273001700010000000000000003000003152271756f7465642220616e64202771756f74656427000000000000000000030d486172626f757220486f75736500000000000054070102030400000077616c6c7300120001000000000000000303024d31030d726f6f6d203838626165333834010000000000000003020000000000000000010000000000000000010000000000000000120001000000000000000303024d31030d726f6f6d203838626165333834010000000000000002020000000000000000010000000000000000010000000000000000');
INSERT INTO steps VALUES('J-3',2,'Delete the job','2026-03-05T09:31:00Z',0,1,X'540a010000000000000000006a6f627300090001000000000000000303034a2d33030c47756c6c20436f7474616765030d486172626f757220486f7573650304303031320309e59cb0e6afafe5ba970308696d70657269616c0303555344010000000000000002010000000000032cac54050100000000637573746f6d6572730009000100000000000000030313c2bd20696e2025205f202a203f205b785d205c03043030313203043030313205540b010000000000000000000073657474696e67730009000100000000000000030100000000000fe9ca0100000000001a3b6e01000000000001da830100000000000d6b4b010000000000000001010000000000089c64010000000000113c28010000000000123db101000000000017db970100000000001b0da9540301020072756c655f636f7374730009000100000000000000030309656163682d7365616d0100000000000006090900010000000000000003031263726f73732d7365616d2d61742d646f6f720100000000000143be0900010000000000000003031963726f73732d7365616d732d6e6f742d73746167676572656401000000000000e9bb0900010000000000000003030f70696563652d746f6f2d73686f7274010000000000004151090001000000000000000303137365616d2d7371756172652d746f2d646f6f720100000000000147ee090001000000000000000303117365616d2d6163726f73732d6c6967687401000000000000811f090001000000000000000303127365616d2d6f6e2d6b6570742d666c6f6f72010000000000009c200900010000000000000003030e746f6f2d6d616e792d6a6f696e73010000000000016dd00900010000000000000003030f66696c6c2d746f6f2d6e6172726f77010000000000005345090001000000000000000303137365616d2d6163726f73732d7472616666696301000000000000b9c8090001000000000000000303127365616d2d696e2d646f6f722d7377696e67010000000000010045541401020000000000000000000000000000000000006a6f625f676f6f6473000900010000000000000003030e676f6f64732033323663343066660100000000000000000308616468657369766503152271756f7465642220616e64202771756f7465642705030367616c0100000000000fcf920100000000001c4970010000000000131c5e0100000000000d6863030c717561727465722d64726f700100000000001d2b9601000000000008b31a01000ab088ed8000000302796401000000000019e1fa010000000077a360640100000000001d1cd501000000000002d7fb54060102000000006d6561737572657300090001000000000000000303024d31010000000000000000030003224f2753686561202620536f6e733b2044524f50205441424c45206a6f62733b202d2d05540b0102030000000000000000726f6f6d7300090001000000000000000303024d31030d726f6f6d20323737306530393701000000000000000303224f2753686561202620536f6e733b2044524f50205441424c45206a6f62733b202d2d01ffffffffffffffff01000000000000000101000000000000000101ffffffffffffffca0100000000000b9a4c0309e59cb0e6afafe5ba97090001000000000000000303024d31030d726f6f6d2038386261653338340100000000000000000309e59cb0e6afafe5ba9701000000000000000001000000000000000001000000000000000001ffffffffffffffa601000000000019e68605090001000000000000000303024d31030d726f6f6d20366462346430643601000000000000000203000100000000000000010100000000000000000100000000000000000100000000000000140100000003b9aca0000313c2bd20696e2025205f202a203f205b785d205c090001000000000000000303024d31030d726f6f6d20346139353162643001000000000000000103152271756f7465642220616e64202771756f7465642701000000000000000201000000000000000101000000000000000101000000000000000d0100000003b9aca00003224f2753686561202620536f6e733b2044524f50205441424c45206a6f62733b202d2d54070102030400000077616c6c7300090001000000000000000303024d31030d726f6f6d20383862616533383401000000000000000102404eb9306db6d04f010000000000199c4101fffffffffffffd27090001000000000000000303024d31030d726f6f6d20366462346430643601000000000000000202405d64982d45b669010000000000021c630100000000000000e2090001000000000000000303024d31030d726f6f6d20383862616533383401000000000000000002000000000000000001000000000001037d010000000000000213090001000000000000000303024d31030d726f6f6d203664623464306436010000000000000003024075b2c0c2dd03400100000000000ac84a01ffffffffffffff2d090001000000000000000303024d31030d726f6f6d203838626165333834010000000000000003020000000000000000010000000000000000010000000000000000090001000000000000000303024d31030d726f6f6d203664623464306436010000000000000000024066800000000000010000000000176f7d01000000000000010e090001000000000000000303024d31030d726f6f6d203838626165333834010000000000000002020000000000000000010000000000000000010000000000000000090001000000000000000303024d31030d726f6f6d20366462346430643601000000000000000102405bc65983f82bc4010000000000115c01010000000000000264090001000000000000000303024d31030d726f6f6d203664623464306436010000000000000006024069c6cc2c678e380100000000000117b301fffffffffffffcee090001000000000000000303024d31030d726f6f6d20366462346430643601000000000000000702405a121f8e8bc71e0100000000000212a7010000000000000143090001000000000000000303024d31030d726f6f6d20366462346430643601000000000000000402406f3da27c8cc9f801000000000004459601fffffffffffffc4d090001000000000000000303024d31030d726f6f6d203664623464306436010000000000000005024072124b029a081e0100000000001110e301fffffffffffffec8090001000000000000000303024d31030d726f6f6d203461393531626430010000000000000001024066800000000000010000000000037ea101fffffffffffffe46090001000000000000000303024d31030d726f6f6d20346139353162643001000000000000000002406d5b722c80042f0100000000001ac99401fffffffffffffe74090001000000000000000303024d31030d726f6f6d203461393531626430010000000000000003024032ae90a89ecde401000000000005ce9801000000000000039b090001000000000000000303024d31030d726f6f6d20346139353162643001000000000000000202405680000000000001000000000015b09601fffffffffffffcb0090001000000000000000303024d31030d726f6f6d20346139353162643001000000000000000402406839e56330253701000000000010fb9a01fffffffffffffe2a54060102030400006f75746c696e655f706f696e747300090001000000000000000303024d31030d726f6f6d20323737306530393701000000000000000401000000000001fc8b0100000000000162c5090001000000000000000303024d31030d726f6f6d2032373730653039370100000000000000030100000000000dc97c01fffffffffff937b9090001000000000000000303024d31030d726f6f6d2032373730653039370100000000000000020100000000000d84600100000000000a1db3090001000000000000000303024d31030d726f6f6d20323737306530393701000000000000000101fffffffffff3949201fffffffffff12e02090001000000000000000303024d31030d726f6f6d2032373730653039370100000000000000000100000000000648d101fffffffffff6dd055404010203046375746f75747300090001000000000000000303024d31030d726f6f6d203838626165333834010000000000000000090001000000000000000303024d31030d726f6f6d203664623464306436010000000000000000090001000000000000000303024d31030d726f6f6d2032373730653039370100000000000000005407010203040500006375746f75745f706f696e747300090001000000000000000303024d31030d726f6f6d20383862616533383401000000000000000001000000000000000001fffffffffff4786b01fffffffffffbfb6d090001000000000000000303024d31030d726f6f6d2036646234643064360100000000000000000100000000000000000100000000000a9c0c0100000000000768e1090001000000000000000303024d31030d726f6f6d20383862616533383401000000000000000001000000000000000101fffffffffff709bd010000000000068945090001000000000000000303024d31030d726f6f6d20366462346430643601000000000000000001000000000000000101fffffffffffc657001fffffffffff39db1090001000000000000000303024d31030d726f6f6d20366462346430643601000000000000000001000000000000000201000000000007813501000000000006edf4090001000000000000000303024d31030d726f6f6d20383862616533383401000000000000000001000000000000000201000000000008b6c701000000000002e61f090001000000000000000303024d31030d726f6f6d2036646234643064360100000000000000000100000000000000030100000000000941f201ffffffffffff8208090001000000000000000303024d31030d726f6f6d20383862616533383401000000000000000001000000000000000301000000000002e5c601fffffffffff7ab09090001000000000000000303024d31030d726f6f6d20383862616533383401000000000000000001000000000000000401fffffffffffc6a9301000000000002c950090001000000000000000303024d31030d726f6f6d2036646234643064360100000000000000000100000000000000040100000000000be31e010000000000089981090001000000000000000303024d31030d726f6f6d2038386261653338340100000000000000000100000000000000050100000000000000d40100000000000bda89090001000000000000000303024d31030d726f6f6d2038386261653338340100000000000000000100000000000000060100000000000d09b001ffffffffffffcbb2540f0102030400000000000000000000006f70656e696e677300090001000000000000000303024d31030d726f6f6d203237373065303937030a442039303363623034650100000000000000010307617263687761790100000000000000010100000000000133e1010000000000055776010000000000106b7203036f757401000000000000000103152271756f7465642220616e64202771756f74656427030430303132030430303132090001000000000000000303024d31030d726f6f6d203461393531626430030a44203831346262636639010000000000000000030677696e646f7701000000000000000601000000000012376b0100000000001be061010000000000006ebd03046e6f6e65010000000000000001030c47756c6c20436f747461676503224f2753686561202620536f6e733b2044524f50205441424c45206a6f62733b202d2d03152271756f7465642220616e64202771756f74656427090001000000000000000303024d31030d726f6f6d203664623464306436030a442034636665323732380100000000000000000307617263687761790100000000000000050100000000000ca03d01000000000019bc7e010000000000082b3703036f757401000000000000000003043030313203224f2753686561202620536f6e733b2044524f50205441424c45206a6f62733b202d2d030c47756c6c20436f7474616765090001000000000000000303024d31030d726f6f6d203237373065303937030a4420663536313264383801000000000000000003076172636877617901000000000000000001000000000011b6d901000000000015c90f01000000000019c9ec03046e6f6e6501000000000000000103152271756f7465642220616e64202771756f7465642703152271756f7465642220616e64202771756f74656427031374776f0a6c696e657309616e6420612074616254030102006a6f625f73746174657300090001000000000000000303086d65617375726564030a323032362d30322d31310900010000000000000003030671756f746564030a323032362d30332d31325407010200000000006f666665725f6c696e6573000900010000000000000003030d6974656d2d316433613237343601000000000000000001000000000000000001000000000000000101000000000003c08f010000000000029faa0900010000000000000003030d6974656d2d386266626666353401000000000000000101000000000000000101000000000000000001000000000001b4e1010000000000046c69540401020000616c7465726e617469766573000900010000000000000003030a422d30666137633565390100000000000000000310c2bd20696e20c2ab2573c2bb20e6bca254060102030000007377617073000900010000000000000003030a422d3066613763356539010000000000000000030d617265612d6366353764303161030f6361727065742d3365313638353236050900010000000000000003030a422d3066613763356539010000000000000001030d617265612d38363535633033370505');
INSERT INTO steps VALUES('J-1',1,'Import','2026-11-26T00:32:33Z',0,0,X'540a010000000000000000006a6f62730017000100000000000000010000031a47756c6c20436f74746167652c2067726f756e6420666c6f6f72000000000000000000031847756c6c20436f74746167652c20616c6c20666c6f6f7273000000000000');
INSERT INTO steps VALUES('J-8',1,'Import','2026-11-26T03:59:46Z',0,0,X'540a010000000000000000006a6f62730017000100000000000000050000030d56657273696f6e207468726565000000000000000000031456657273696f6e2074687265652c20616761696e000000000000');
INSERT INTO steps VALUES('J-9',1,'Import','2026-11-26T10:42:09Z',0,0,X'541f0102030000000000000000000000000000000000000000000000000000000073746169727300170001000000000000000603024d31030573746169720000000000000000000000000000000003087374726169676874000000010000000000023b800003046c65667400000000000000000000000000000000000000000000000003076c616e64696e6700000001000000000002fa0000030572696768740000000000');
INSERT INTO steps VALUES('J-9',2,'Import','2026-11-26T10:42:09Z',0,0,X'541f0102030000000000000000000000000000000000000000000000000000000073746169727300170001000000000000000603024d31030573746169720000000000000000000000000000000003076c616e64696e67010000000000000006010000000000000003010000000000023b8001000000000002fa000003057269676874000000000000000000000000000000000000000000000000030777696e6465727301000000000000000501000000000000000601000000000001dc4001000000000002ba8000030a6261636b2d72696768740000000000');
INSERT INTO steps VALUES('J-9',3,'Import','2026-11-26T17:30:24Z',0,0,X'540a010000000000000000006a6f6273001700010000000000000006000003154d696c6c204c616e652c207468652073746169727300000000000000000003164d696c6c204c616e652c20626f746820737461697273000000000000541f0102030000000000000000000000000000000000000000000000000000000073746169727300170001000000000000000603024d310305737461697200000000000000000000000000000000030777696e6465727301000000000000000501000000000000000601000000000001dc4001000000000002ba8000030a6261636b2d7269676874000000000000000000000000000000000000000000000000030873747261696768740100000000000000000100000000000000000100000000000000000100000000000000000003046c6566740000000000170001000000000000000603024d31030663656c6c61720000000000000000000000000000000000010000000000000006010000000000000003010000000000023b80010000000000023b800003057269676874000000000000000000000000000000000000000000000000000100000000000000000100000000000000000100000000000000000100000000000000000003046c6566740000000000540a0102030400000000000073746169725f7475726e7300120001000000000000000603024d3103057374616972010000000000000000030777696e64657273030a6261636b2d726967687401000000000000000501000000000000000601000000000001dc4001000000000002ba80120001000000000000000603024d310305737461697201000000000000000103076c616e64696e6703046c656674010000000000000009010000000000000000010000000000023b80010000000000023b80');
PRAGMA writable_schema=ON;
INSERT INTO sqlite_schema(type,name,tbl_name,rootpage,sql)VALUES('table','search','search',0,'CREATE VIRTUAL TABLE search USING fts5 (
  number, title, customer, address, notes,
  tokenize = "unicode61 remove_diacritics 2",
  prefix = ''1 2 3''
)');
CREATE TABLE IF NOT EXISTS 'search_data'(id INTEGER PRIMARY KEY, block BLOB);
INSERT INTO search_data VALUES(1,X'060b16221241');
INSERT INTO search_data VALUES(10,X'00000000010e0e000e0101010201010301010401010501010601010701010801010901010a01010b01010c01010d01010e0101');
INSERT INTO search_data VALUES(137438953473,X'000004c20430303134010203040132010601020501043230323601020201033535350106010204010161010601040b020563726f7373010601041202026c6c010601040202037263680106010410010362757401060104040107636f7474616765011201010301020801030302077573746f6d65720106010407010664696e696e67010601040f0105666c6f6f720106010105010667726f756e6401060101040203756c6c0112010102010207010302010468617665010601040a0107696e76616c696401060102090203736c65010601030801076b69746368656e010601040601046c616e65010601030504047465726e010601030402056976696e67010601041401096f64646c6562757279010601020302016601060103090104706f727401060103060106726174686572010601040902036f6f6d01060104150501730106010403010773616e6472656c0106010307020365616d010601040c010674616d73696e010801020206020368616e0106010411030165010a0104050b0703056f7272696e010601030a0105756e646572010601040d0105776f756c640106010408000231300108030102050101320102020101350106010204010161010c0104020b070401016201060104040101630118010103010208010303010407010164010601040f0101660106010105010167011401010204010207010302010168010601040a010169010c01020901030801016b010601040601016c010e0103040301041401016f010c0102030103090101700106010306010172010a010403080e010173010c01030701040c010174011a0102020601030a0104050b0504010175010601040d010177010601040800033230310108030102050102323001020201023535010601020401026163010601041202016c010601040202017201060104100102627501060104040102636f0112010103010208010303020175010601040701026469010601040f0102666c0106010105010267720106010104020175011201010201020701030201026861010601040a0102696e0106010209020173010601030801026b69010601040601026c61010801030403020169010601041401026f64010601020302016601060103090102706f010601030601027261010601040902016f010801040314010273610106010307020165010601040c01027461010801020206020168011201030a0104050b05040102756e010601040d0102776f01060104080004333031340108030102050103323032010202010335353501060102040103616372010601041202026c6c0106010402020272630106010410010362757401060104040103636f740112010103010208010303020275730106010407010364696e010601040f0103666c6f0106010105010367726f01060101040202756c01120101020102070103020103686176010601040a0103696e7601060102090202736c010601030801036b6974010601040601036c616e01080103040302026976010601041401036f646401060102030103706f7201060103060103726174010601040902026f6f010801040314010373616e010601030702026561010601040c010374616d010801020206020268610106010411030165010a0104050b0703016f010601030a0103756e64010601040d0103776f750106010408040808090a080c090a0a140e0d0c0d100b0e0a0e0b0b0c10080b0d0a080e0a0e0a0a0c0c0c0a06080b081108080f080b080c0b080a0b1208080b0709090808090f080909090e090908090a08090809090909080a0e09090c080a0a09090a10090a0a0a0f0a0a090a0b090a0a0a0a0a090b090a080a');
INSERT INTO search_data VALUES(274877906945,X'0000026e053030303132020802010202010332c2ba020601020e010133020601020d010161020601040502026e640206010404010163020601020b010464726f70020601020601066962616e657a020601020a02016e020601010302027a71020601020f01046a6f6273020601020801056c696e6573020601040301056d61796f72020601020c01016f0206010203010673656e6f726102060102090203686561020601020402036f6e7302060102050103746162020601040604026c6502060102070202776f020601040201017802060101040102c2bd020601010200023130020802010202010132020601020e010133020601020d010161020801040403010163020601020b0101640206010206010169020e01010301020a0701016a020601020801016c020601040301016d020601020c01016f0206010203010173020a0102040306010174020e0102070104020601017802060101040102c2bd02060101020003323030020802010202010332c2ba020601020e0102616e020601040401026472020601020601026962020601020a02016e020601010302017a020601020f01026a6f020601020801026c69020601040301026d61020601020c010273650206010209020168020601020402016f020601020501027461020c01020701040602017702060104020004333030310208020102020103616e640206010404010364726f02060102060103696261020601020a02027a71020601020f01036a6f62020601020801036c696e020601040301036d6179020601020c010373656e020601020902026865020601020402026f6e02060102050103746162020c0102070104060202776f0206010402040c0a080809080b0d08090b0c0c080d0a0a0a090908090a08080908080c080808080a0c08090b0a09090908080909090908080c080c0a0a0a090a0a0a0a09090d');
INSERT INTO search_data VALUES(412316860417,X'0000029f053030303132020902010202010332c2ba020701020e010133020701020d010161020701040502026e640207010404010163020701020b010464726f7002070102060107686172626f7572020601010202046f757365020601010301066962616e657a020701020a02016e020102027a71020701020f01046a6f6273020701020801056c696e6573020701040301056d61796f72020701020c01016f0207010203010673656e6f726102070102090203686561020701020402036f6e7302070102050103746162020701040604026c6502070102070202776f020701040201017802010102c2bd020100023130020902010202010132020701020e010133020701020d010161020901040403010163020701020b0101640207010206010168020801010203010169020901020a0701016a020701020801016c020701040301016d020701020c01016f0207010203010173020b0102040306010174020f0102070104020601017802010102c2bd02010003323030020902010202010332c2ba020701020e0102616e020701040401026472020701020601026861020601010202016f020601010301026962020701020a02016e020102017a020701020f01026a6f020701020801026c69020701040301026d61020701020c010273650207010209020168020701020402016f020701020501027461020d01020701040602017702070104020004333030310209020102020103616e640207010404010364726f02070102060103686172020601010202026f7502060101030103696261020701020a02027a71020701020f01036a6f62020701020801036c696e020701040301036d6179020701020c010373656e020701020902026865020701020402026f6e02070102050103746162020d0102070104060202776f0207010402040c0a080809080b0e0b0d05090b0c0c080d0a0a0a090905060a08080908080909080808080a0c05060b0a090909080905080909090908080c080c0a0a0a090a090a0a0a0a09090d');
INSERT INTO search_data VALUES(549755813889,X'0000029e053030303132020902010202010332c2ba020701020e010133020701020d010161020701040502026e640207010404010163020701020b010464726f7002070102060107686172626f7572020102046f757365020101066962616e657a020701020a02016e020601010302027a71020701020f01046a6f6273020701020801056c696e6573020701040301056d61796f72020701020c01016f0207010203010673656e6f726102070102090203686561020701020402036f6e7302070102050103746162020701040604026c6502070102070202776f020701040201017802060101040102c2bd020601010200023130020902010202010132020701020e010133020701020d010161020901040403010163020701020b01016402070102060101680201010169020f01010301020a0701016a020701020801016c020701040301016d020701020c01016f0207010203010173020b0102040306010174020f0102070104020601017802060101040102c2bd02060101020003323030020902010202010332c2ba020701020e0102616e020701040401026472020701020601026861020102016f020101026962020701020a02016e020601010302017a020701020f01026a6f020701020801026c69020701040301026d61020701020c010273650207010209020168020701020402016f020701020501027461020d01020701040602017702070104020004333030310209020102020103616e640207010404010364726f02070102060103686172020102026f7502010103696261020701020a02027a71020701020f01036a6f62020701020801036c696e020701040301036d6179020701020c010373656e020701020902026865020701020402026f6e02070102050103746162020d0102070104060202776f0207010402040c0a080809080b0b080d08090b0c0c080d0a0a0a090908090a0808090808050c080808080a0c08090b0a090906050908080909090908080c080c0a0a07060a090a0a0a0a09090d');
INSERT INTO search_data VALUES(687194767361,X'0000013c053030303132030c0102050103020103616e6403060101030107636f7474616765030203010467756c6c0302020102696e0306010203010671756f74656403080101020401017803060102040102c2bd03060102020109e59cb0e6afafe5ba97030601040200023130030c0102050103020101610306010103010163030203010167030202010169030601020301017103080101020401017803060102040102c2bd03060102020103e59cb003060104020003323030030c0102050103020102616e03060101030102636f030203010267750302020102696e0306010203010271750308010102040106e59cb0e6afaf0306010402000433303031030c0102050103020103616e6403060101030103636f74030203010367756c030202010371756f0308010102040109e59cb0e6afafe5ba970306010402040e0a0c09090e0809100c080606080908090a0d090707090a0d0e0a08080b');
INSERT INTO search_data VALUES(824633720833,X'00000166053030303132030d0102050103020103616e6403010107636f7474616765030303010467756c6c0303020107686172626f7572030601010202046f75736503060101030102696e0307010203010671756f746564030101017803070102040102c2bd03070102020109e59cb0e6afafe5ba97030701040200023130030d01020501030201016103010101630303030101670303020101680308010102030101690307010203010171030101017803070102040102c2bd03070102020103e59cb003070104020003323030030d0102050103020102616e03010102636f0303030102677503030201026861030601010202016f03060101030102696e03070102030102717503010106e59cb0e6afaf0307010402000433303031030d0102050103020103616e6403010103636f74030303010367756c0303020103686172030601010202026f750306010103010371756f03010109e59cb0e6afafe5ba970307010402040e070c090e0b090a0809100c05060609080508090a0d060707090809060d0e0708080a0907');
INSERT INTO search_data VALUES(962072674305,X'000000da05303030313203010107636f74746167650301010467756c6c03010107686172626f7572030102046f75736503010102696e030101017803010102c2bd03010109e59cb0e6afafe5ba970301000231300301010163030101016703010101680301010169030101017803010102c2bd03010103e59cb00301000332303003010102636f030101026775030101026861030102016f03010102696e03010106e59cb0e6afaf030100043330303103010103636f740301010367756c03010103686172030102026f7503010109e59cb0e6afafe5ba97030104080b080b080605060d06050505050506070706060605060a0807070706');
INSERT INTO search_data VALUES(1099511627777,X'000004c90430303134010303040132010701020501043230323601030201033535350107010204010161010701040b020563726f7373010701041202026c6c010d01010401040202037263680107010410010362757401070104040107636f7474616765011301010301020801030302077573746f6d65720107010407010664696e696e67010701040f0105666c6f6f7201010601730106010105010667726f756e6401010203756c6c0113010102010207010302010468617665010701040a0107696e76616c696401070102090203736c65010701030801076b69746368656e010701040601046c616e65010701030504047465726e010701030402056976696e67010701041401096f64646c6562757279010701020302016601070103090104706f727401070103060106726174686572010701040902036f6f6d01070104150501730107010403010773616e6472656c0107010307020365616d010701040c010674616d73696e010901020206020368616e0107010411030165010b0104050b0703056f7272696e010701030a0105756e646572010701040d0105776f756c64010701040800023130010903010205010132010302010135010701020401016101130101040104020b070401016201070104040101630119010103010208010303010407010164010701040f01016601070101050101670113010102010207010302010168010701040a010169010d01020901030801016b010701040601016c010f0103040301041401016f010d0102030103090101700107010306010172010b010403080e010173010d01030701040c010174011b0102020601030a0104050b0504010175010701040d010177010701040800033230310109030102050102323001030201023535010701020401026163010701041202016c010d01010401040202017201070104100102627501070104040102636f0113010103010208010303020175010701040701026469010701040f0102666c0107010105010267720101020175011301010201020701030201026861010701040a0102696e0107010209020173010701030801026b69010701040601026c61010901030403020169010701041401026f64010701020302016601070103090102706f010701030601027261010701040902016f010901040314010273610107010307020165010701040c01027461010901020206020168011301030a0104050b05040102756e010701040d0102776f01070104080004333031340109030102050103323032010302010335353501070102040103616372010701041202026c6c010d010104010402020272630107010410010362757401070104040103636f740113010103010208010303020275730107010407010364696e010701040f0103666c6f0107010105010367726f01010202756c01130101020102070103020103686176010701040a0103696e7601070102090202736c010701030801036b6974010701040601036c616e01090103040302026976010701041401036f646401070102030103706f7201070103060103726174010701040902026f6f010901040314010373616e010701030702026561010701040c010374616d010901020206020268610107010411030165010b0104050b0703016f010701030a0103756e64010701040d0103776f750107010408040808090a080c0c0a0a140e0d09080a100b0e0a0e0b0b0c10080b0d0a080e0a0e0a0a0c0c0c0a06080e081108080e080b080c0b080a0b1208080b0709090b08090f080909060e090908090a08090809090909080a0e09090c080a0a0c090a10090a0a070f0a0a090a0b090a0a0a0a0a090b090a080a');
INSERT INTO search_data VALUES(1236950581249,X'0000033a0430303031040203010432303236040202010161040601040b020563726f7373040601041202026c6c040c01010401040202037263680406010410010362757404060104040107636f7474616765040601010302077573746f6d6572040c010203010407010664696e696e67040601040f0106666c6f6f72730406010105010467756c6c0406010102010468617665040601040a01076b69746368656e040601040601066c6976696e6704060104140106726174686572040601040902036f6f6d0406010415050173040601040301047365616d040601040c0304636f6e64040601020201047468616e0406010411030165040a0104050b070105756e646572040601040d0105776f756c6404060104080002313004020301013204020201016104120101040104020b070401016204060104040101630412010103010203010407010164040601040f01016604060101050101670406010102010168040601040a01016b040601040601016c0406010414010172040a010403080e010173040c01020201040c010174040c0104050b0504010175040601040d010177040601040800033230300402030102323004020201026163040601041202016c040c01010401040202017204060104100102627504060104040102636f0406010103020175040c01020301040701026469040601040f0102666c040601010501026775040601010201026861040601040a01026b69040601040601026c69040601041401027261040601040902016f04080104031401027365040c01020201040c01027468040c0104050b05040102756e040601040d0102776f040601040800043330303104020301033230320402020103616372040601041202026c6c040c010104010402020272630406010410010362757404060104040103636f74040601010302027573040c010203010407010364696e040601040f0103666c6f0406010105010367756c04060101020103686176040601040a01036b6974040601040601036c697604060104140103726174040601040902026f6f0408010403140103736561040601040c030163040601020201037468610406010411030165040a0104050b070103756e64040601040d0103776f750406010408040809080c0c0a0a0e110d0d0b0b0e0d0d0a080b0b0b0a0c0c07060e080e0808080808080a0b0b08080807090b0809090b09090909090909090c0c090909080a0c090a0a0c0a0a0a0a0a0a0a0a0a080a0a0a');
INSERT INTO search_data VALUES(1374389534721,X'000004ac053030313432050601020503013505020301043230323605020201033535350506010204010161050601040b020563726f7373050601041202026c6c050601040202037263680506010410010362757405060104040107636f7474616765050c01020801030302077573746f6d65720506010407010664696e696e67050601040f010467756c6c050c010207010302010468617665050601040a0107696e76616c696405060102090203736c65050601030801076b69746368656e050601040601046c616e65050601030504047465726e050601030402056976696e67050601041401096f64646c6562757279050601020302016605060103090104706f727405060103060106726174686572050601040902036f6f6d05060104150501730506010403010773616e6472656c0506010307020365616d050601040c010674616d73696e050801020206020368616e0506010411030165050a0104050b0703056f7272696e050601030a030372656505060101030105756e646572050601040d010776657273696f6e05060101020105776f756c640506010408000231300508030102050101320502020101350506010204010161050c0104020b070401016205060104040101630512010208010303010407010164050601040f010167050c010207010302010168050601040a010169050c01020901030801016b050601040601016c050e0103040301041401016f050c0102030103090101700506010306010172050a010403080e010173050c01030701040c01017405200101030102020601030a0104050b0504010175050601040d0101760506010102010177050601040800033230310508030102050102323005020201023535050601020401026163050601041202016c050601040202017205060104100102627505060104040102636f050c010208010303020175050601040701026469050601040f01026775050c01020701030201026861050601040a0102696e0506010209020173050601030801026b69050601040601026c61050801030403020169050601041401026f64050601020302016605060103090102706f050601030601027261050601040902016f050801040314010273610506010307020165050601040c01027461050801020206020168051801010301030a0104050b05040102756e050601040d0102766505060101020102776f050601040800043330313405060102050301350502030103323032050202010335353505060102040103616372050601041202026c6c0506010402020272630506010410010362757405060104040103636f74050c010208010303020275730506010407010364696e050601040f010367756c050c0102070103020103686176050601040a0103696e7605060102090202736c050601030801036b6974050601040601036c616e05080103040302026976050601041401036f646405060102030103706f7205060103060103726174050601040902026f6f050801040314010373616e050601030702026561050601040c010374616d050801020206020268610506010411030165050a0104050b0703016f050601030a03017205060101030103756e64050601040d010376657205060101020103776f750506010408040b06090a080c090a0a110e0d0e0b0e0a0e0b0b0c10080b0d0a080e0a0e0a0a0c0a0c0e0c0a06080b080e080b080b080c0b080a0b150808080b0709090808090c08090c090908090a08090809090909080a110909090b06080a0a09090a0d090a0d0a0a090a0b090a0a0a0a0a090b090a08080a0a');
INSERT INTO search_data VALUES(1511828488193,X'000004cb053030313432050701020503013505030301043230323605030201033535350507010204010161050701040b020563726f7373050701041202046761696e050601010402026c6c050701040202037263680507010410010362757405070104040107636f7474616765050d01020801030302077573746f6d65720507010407010664696e696e67050701040f010467756c6c050d010207010302010468617665050701040a0107696e76616c696405070102090203736c65050701030801076b69746368656e050701040601046c616e65050701030504047465726e050701030402056976696e67050701041401096f64646c6562757279050701020302016605070103090104706f727405070103060106726174686572050701040902036f6f6d05070104150501730507010403010773616e6472656c0507010307020365616d050701040c010674616d73696e050901020206020368616e0507010411030165050b0104050b0703056f7272696e050701030a030372656505070101030105756e646572050701040d010776657273696f6e05070101020105776f756c64050701040800023130050903010205010132050302010135050701020401016105130101040104020b070401016205070104040101630513010208010303010407010164050701040f010167050d010207010302010168050701040a010169050d01020901030801016b050701040601016c050f0103040301041401016f050d0102030103090101700507010306010172050b010403080e010173050d01030701040c01017405210101030102020601030a0104050b0504010175050701040d01017605070101020101770507010408000332303105090301020501023230050302010235350507010204010261630507010412020167050601010402016c050701040202017205070104100102627505070104040102636f050d010208010303020175050701040701026469050701040f01026775050d01020701030201026861050701040a0102696e0507010209020173050701030801026b69050701040601026c61050901030403020169050701041401026f64050701020302016605070103090102706f050701030601027261050701040902016f050901040314010273610507010307020165050701040c01027461050901020206020168051901010301030a0104050b05040102756e050701040d0102766505070101020102776f050701040800043330313405070102050301350503030103323032050302010335353505070102040103616372050701041202026761050601010402026c6c0507010402020272630507010410010362757405070104040103636f74050d010208010303020275730507010407010364696e050701040f010367756c050d0102070103020103686176050701040a0103696e7605070102090202736c050701030801036b6974050701040601036c616e05090103040302026976050701041401036f646405070102030103706f7205070103060103726174050701040902026f6f050901040314010373616e050701030702026561050701040c010374616d050901020206020268610507010411030165050b0104050b0703016f050701030a03017205070101030103756e64050701040d010376657205070101020103776f750507010408040b06090a080c0b090a0a110e0d0e0b0e0a0e0b0b0c10080b0d0a080e0a0e0a0a0c0a0c0e0c0a06080e080e080b080b080c0b080a0b150808080b070909080808090c08090c090908090a08090809090909080a110909090b06080a0a0909090a0d090a0d0a0a090a0b090a0a0a0a0a090b090a08080a0a');
INSERT INTO search_data VALUES(1649267441665,X'000000db043030313606020301043230323606020201046c616e65060601010301046d696c6c060601010201067374616972730606010105010374686506060101040002313006020301013206020201016c060601010301016d06060101020101730606010105010174060601010400033230310602030102323006020201026c61060601010301026d690606010102010273740606010105010274680606010104000433303136060203010332303206020201036c616e060601010301036d696c060601010201037374610606010105010374686506060101040408090b0b0d0a07060808080808070909090909080a0a0a');
INSERT INTO search_data VALUES(1786706395137,X'000000f504303031360603030104323032360603020104626f7468060601010401046c616e65060701010301046d696c6c0607010102010673746169727306070101050103746865060100023130060303010132060302010162060601010401016c060701010301016d0607010102010173060701010501017406010003323031060303010232300603020102626f060601010401026c61060701010301026d69060701010201027374060701010501027468060100043330313606030301033230320603020103626f74060601010401036c616e060701010301036d696c060701010201037374610607010105010374686506010408090b0b0b0d07070608080808050807090909090609080a0a0a0a');
INSERT INTO search_data VALUES(1924145348609,X'0000012d04303030320702030104323032360702020104626f746807060101040108637573746f6d6572070601020301046c616e65070601010301046d696c6c070601010201067374616972730706010105010574686972640706010202000231300702030101320702020101620706010104010163070601020301016c070601010301016d0706010102010173070601010501017407060102020003323030070203010232300702020102626f070601010401026375070601020301026c61070601010301026d69070601010201027374070601010501027468070601020200043330303207020301033230320702020103626f7407060101040103637573070601020301036c616e070601010301036d696c070601010201037374610706010105010374686907060102020408090b0f0b0b0d0c0706080808080808080709090909090909080a0a0a0a0a');
CREATE TABLE IF NOT EXISTS 'search_idx'(segid, term, pgno, PRIMARY KEY(segid, term)) WITHOUT ROWID;
INSERT INTO search_idx VALUES(1,X'',2);
INSERT INTO search_idx VALUES(2,X'',2);
INSERT INTO search_idx VALUES(3,X'',2);
INSERT INTO search_idx VALUES(4,X'',2);
INSERT INTO search_idx VALUES(5,X'',2);
INSERT INTO search_idx VALUES(6,X'',2);
INSERT INTO search_idx VALUES(7,X'',2);
INSERT INTO search_idx VALUES(8,X'',2);
INSERT INTO search_idx VALUES(9,X'',2);
INSERT INTO search_idx VALUES(10,X'',2);
INSERT INTO search_idx VALUES(11,X'',2);
INSERT INTO search_idx VALUES(12,X'',2);
INSERT INTO search_idx VALUES(13,X'',2);
INSERT INTO search_idx VALUES(14,X'',2);
CREATE TABLE IF NOT EXISTS 'search_content'(id INTEGER PRIMARY KEY, c0, c1, c2, c3, c4);
INSERT INTO search_content VALUES(1,'2026-014','Gull Cottage, all floors',replace('Tamsin Oddlebury\n555 0142\ntamsin@gull-cottage.invalid','\n',char(10)),replace('Gull Cottage\nLantern Lane\nPort Sandrel\nIsle of Thorrin','\n',char(10)),'All rooms but the kitchen. Customer would rather have a seam under the dining arch than across the living room.');
INSERT INTO search_content VALUES(2,'0012','½ in % _ * ? [x] \',replace('0012\nO''Shea & Sons; DROP TABLE jobs; --\nSeñora Ibáñez, C/ Mayor 3, 2º izq.','\n',char(10)),'',replace('two\nlines	and a tab','\n',char(10)));
INSERT INTO search_content VALUES(4,'2026-001','Gull Cottage, all floors',replace('Second Customer\n\n','\n',char(10)),'','All rooms but the kitchen. Customer would rather have a seam under the dining arch than across the living room.');
INSERT INTO search_content VALUES(5,'2026-015','Version three, again',replace('Tamsin Oddlebury\n555 0142\ntamsin@gull-cottage.invalid','\n',char(10)),replace('Gull Cottage\nLantern Lane\nPort Sandrel\nIsle of Thorrin','\n',char(10)),'All rooms but the kitchen. Customer would rather have a seam under the dining arch than across the living room.');
INSERT INTO search_content VALUES(6,'2026-016','Mill Lane, both stairs',replace('\n\n','\n',char(10)),'','');
INSERT INTO search_content VALUES(7,'2026-002','Mill Lane, both stairs',replace('Third Customer\n\n','\n',char(10)),'','');
CREATE TABLE IF NOT EXISTS 'search_docsize'(id INTEGER PRIMARY KEY, sz BLOB);
INSERT INTO search_docsize VALUES(1,X'0204080914');
INSERT INTO search_docsize VALUES(2,X'01030e0005');
INSERT INTO search_docsize VALUES(4,X'0204020014');
INSERT INTO search_docsize VALUES(5,X'0203080914');
INSERT INTO search_docsize VALUES(6,X'0204000000');
INSERT INTO search_docsize VALUES(7,X'0204020000');
CREATE TABLE IF NOT EXISTS 'search_config'(k PRIMARY KEY, v) WITHOUT ROWID;
INSERT INTO search_config VALUES('version',4);
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
  logo TEXT -- digest in files
, job_numbers TEXT) STRICT;
INSERT INTO price_book VALUES(1,'USD',2,70000,400000,'Wherry & Daughter Floors',replace('4 Ropewalk\nPort Sandrel\nIsle of Thorrin','\n',char(10)),'Seams are placed as the plan shows; a proper seam is not wholly invisible. Old floors are taken up only where a line says so.',30,NULL,'YYYY-###');
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
INSERT INTO catalogue VALUES('brackenholm-loop-rust',4,'carpet','Brackenholm Loop, rust','Tolland Vale Carpets','m2',640000,0,0,0,'set',16000,4000000,0,'each',0,0,0,0);
INSERT INTO catalogue VALUES('carpet-adhesive',9,'adhesive','Carpet adhesive, 4 gal','Brindle Trade Supply','gal',0,0,0,0,'set',0,0,4000000,'tub',0,1541149949952,0,0);
INSERT INTO catalogue VALUES('door-bar',10,'transition','Door bar, satin, 3 ft','Brindle Trade Supply','each',0,0,0,0,'set',0,0,1000000,'each',0,0,146304,0);
INSERT INTO catalogue VALUES('dovecote-cushion',5,'cushion','Dovecote Cushion, 7/16 in','Brindle Trade Supply','sq yd',292608,0,0,0,'set',0,2194560,30000000,'roll',0,0,0,0);
INSERT INTO catalogue VALUES('fennel-twist-oat',0,'carpet','Fennel Twist, oat','Skerrow Mills','sq yd',585216,0,0,0,'set',48768,5852160,0,'each',0,0,0,0);
INSERT INTO catalogue VALUES('larkrise-check-ink',2,'carpet','Larkrise Check, ink','Tolland Vale Carpets','sq yd',585216,0,48768,48768,'set',48768,4389120,0,'each',0,0,0,0);
INSERT INTO catalogue VALUES('marlfield-trellis-moss',3,'carpet','Marlfield Trellis, moss','Tolland Vale Carpets','sq yd',585216,0,109728,73152,'half-drop',48768,4389120,0,'each',0,0,0,0);
INSERT INTO catalogue VALUES('oak-reducer',11,'transition','Oak reducer, 6 ft','Brindle Trade Supply','ft',0,0,0,0,'set',0,0,6000000,'each',0,0,0,0);
INSERT INTO catalogue VALUES('quillstone-saxony-slate',1,'carpet','Quillstone Saxony, slate','Skerrow Mills','sq yd',658368,0,0,0,'set',48768,4876800,0,'each',0,0,0,0);
INSERT INTO catalogue VALUES('seam-sealer',7,'sealer','Seam sealer, 8 fl oz bottle','Brindle Trade Supply','each',0,0,0,0,'set',0,0,1000000,'each',0,0,4876800,0);
INSERT INTO catalogue VALUES('seam-tape-3',6,'tape','Seam tape, 3 in','Brindle Trade Supply','ft',0,0,0,0,'set',0,0,66000000,'roll',12192,0,0,0);
INSERT INTO catalogue VALUES('tack-strip',8,'strip','Tack strip, 4 ft lengths','Brindle Trade Supply','ft',0,0,0,0,'set',0,0,400000000,'carton',0,0,0,0);
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
INSERT INTO suppliers VALUES('Skerrow Mills',0,'Skerrow','555 0110','orders@skerrow.invalid','RC-118',3500,4500,90000,12);
INSERT INTO suppliers VALUES('Tolland Vale Carpets',1,NULL,NULL,'desk@tolland.invalid',NULL,0,0,0,0);
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
INSERT INTO prices VALUES(0,'fennel-twist-oat','sq yd',1140,2150,NULL,NULL,0);
INSERT INTO prices VALUES(1,'fennel-twist-oat','sq yd',980,2025,NULL,NULL,160000000);
INSERT INTO prices VALUES(2,'quillstone-saxony-slate','sq yd',1560,2900,NULL,NULL,0);
INSERT INTO prices VALUES(3,'quillstone-saxony-slate','sq yd',1390,2750,NULL,NULL,150000000);
INSERT INTO prices VALUES(4,'larkrise-check-ink','sq yd',1820,3450,NULL,NULL,0);
INSERT INTO prices VALUES(5,'marlfield-trellis-moss','sq yd',1975,3700,NULL,NULL,0);
INSERT INTO prices VALUES(6,'brackenholm-loop-rust','m2',1410,2690,NULL,NULL,0);
INSERT INTO prices VALUES(7,'dovecote-cushion','sq yd',310,595,NULL,NULL,0);
INSERT INTO prices VALUES(8,'seam-tape-3','ft',24,55,NULL,NULL,0);
INSERT INTO prices VALUES(9,'seam-sealer','each',620,1150,NULL,NULL,0);
INSERT INTO prices VALUES(10,'tack-strip','ft',11,32,NULL,NULL,0);
INSERT INTO prices VALUES(11,'carpet-adhesive','gal',1750,2900,NULL,NULL,0);
INSERT INTO prices VALUES(12,'door-bar','each',740,1500,NULL,NULL,0);
INSERT INTO prices VALUES(13,'oak-reducer','ft',320,675,NULL,NULL,0);
INSERT INTO prices VALUES(14,'lay','sq yd',425,775,NULL,NULL,0);
INSERT INTO prices VALUES(15,'side-seam','ft',95,180,NULL,NULL,0);
INSERT INTO prices VALUES(16,'cross-seam','each',850,1500,NULL,NULL,0);
INSERT INTO prices VALUES(17,'stair','each',650,1150,NULL,NULL,0);
INSERT INTO prices VALUES(18,'fixed','each',4500,8500,NULL,NULL,0);
CREATE TABLE files (
  digest TEXT NOT NULL PRIMARY KEY,
  bytes BLOB NOT NULL
) STRICT, WITHOUT ROWID;
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
INSERT INTO rolls VALUES('R-1','fennel-twist-oat','L-1',585216,1,NULL,195072,NULL);
INSERT INTO rolls VALUES('R-2','quillstone-saxony-slate','L9',390144,1,NULL,73152,NULL);
INSERT INTO rolls VALUES('R-7','fennel-twist-oat','L-1',877824,0,NULL,0,NULL);
INSERT INTO rolls VALUES('R-9','quillstone-saxony-slate','L9',2535936,0,'rack 2',0,NULL);
CREATE TABLE reservations (
  roll TEXT NOT NULL REFERENCES rolls,
  job_id TEXT NOT NULL,
  length_ticks INTEGER NOT NULL CHECK (length_ticks > 0),
  made TEXT NOT NULL,
  PRIMARY KEY (roll, job_id)
) STRICT, WITHOUT ROWID;
INSERT INTO reservations VALUES('R-9','J-1',487680,'2026-11-26T03:59:28Z');
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
INSERT INTO roll_moves VALUES(1,'R-7','received',NULL,1463040,1463040,'2026-11-26T00:32:05Z',NULL);
INSERT INTO roll_moves VALUES(2,'R-7','reserved','J-1',585216,1463040,'2026-11-26T00:32:05Z',NULL);
INSERT INTO roll_moves VALUES(3,'R-7','cut','J-1',-585216,877824,'2026-11-26T00:32:05Z',NULL);
INSERT INTO roll_moves VALUES(4,'R-1','received',NULL,585216,585216,'2026-11-26T00:32:05Z','remnant of roll R-7');
INSERT INTO roll_moves VALUES(5,'R-9','received',NULL,2926080,2926080,'2026-11-26T03:59:28Z',NULL);
INSERT INTO roll_moves VALUES(6,'R-9','reserved','J-1',487680,2926080,'2026-11-26T03:59:28Z',NULL);
INSERT INTO roll_moves VALUES(7,'R-9','cut','J-8',-390144,2535936,'2026-11-26T17:30:24Z',NULL);
INSERT INTO roll_moves VALUES(8,'R-2','received','J-8',390144,390144,'2026-11-26T17:30:24Z','remnant of roll R-9');
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
INSERT INTO cut_pieces VALUES(1,'J-8','R-9','quillstone-saxony-slate','L9','1',585216,390144,'2026-11-26T17:30:24Z');
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
INSERT INTO orders VALUES('O-1',1,'Skerrow Mills','made','2026-03-06',NULL,NULL,NULL,NULL,NULL,replace('Fennel Twist, oat: one length of 62'' 0", 12'' 0" wide, in one piece\nCuts from this length, width × length, from its start: 1: 5'' 3 3/4" × 24'' 10 1/2"; 3: 2'' 0 1/4" × 19'' 9"; 10: 2'' 11 1/2" × 9'' 7 1/2"; 4: 2'' 3" × 7'' 9"; 14: 2'' 11 1/2" × 5'' 0 3/4"; 2: 12'' 0" × 19'' 9"; 5: 12'' 0" × 14'' 0"; 11: 3'' 8 1/2" × 3'' 2 3/4"; 12: 3'' 8 1/2" × 3'' 2 3/4"; 13: 3'' 8 1/2" × 3'' 2 3/4"\nFennel Twist, oat: from one dye lot; pile one way along the whole length\nQuillstone Saxony, slate: one length of 8'' 0", 13'' 6" wide, in one piece\nCuts from this length, width × length, from its start: 7: 8'' 5 1/4" × 7'' 3"\nQuillstone Saxony, slate: from one dye lot; pile one way along the whole length\nQuillstone Saxony, slate: not ordered, from our stock: 17'' 2" of roll R-0988','\n',char(10)),'USD',2,112960,0,112960);
INSERT INTO orders VALUES('O-2',2,'Tolland Vale Carpets','made','2026-03-06',NULL,NULL,NULL,NULL,NULL,replace('Marlfield Trellis, moss: one length of 11'' 0", 12'' 0" wide, in one piece\nCuts from this length, width × length, from its start: 6: 11'' 5 3/8" × 10'' 9 3/8"\nMarlfield Trellis, moss: from one dye lot; pile one way along the whole length\nMarlfield Trellis, moss: pattern repeat 2'' 3", half-drop match; start at a whole repeat\nBrackenholm Loop, rust: one length of 4.700 m, 4.000 m wide, in one piece\nCuts from this length, width × length, from its start: 9: 3.176 m × 4.691 m\nBrackenholm Loop, rust: from one dye lot; pile one way along the whole length','\n',char(10)),'USD',2,55475,0,55475);
INSERT INTO orders VALUES('O-3',3,'Brindle Trade Supply','received','2026-03-06',NULL,NULL,NULL,NULL,'2026-11-26','','USD',2,53464,0,53464);
INSERT INTO orders VALUES('O-4',4,'Skerrow Mills','made','2026-11-26',NULL,NULL,NULL,NULL,'2026-11-26',replace('Fennel Twist, oat: one length of 62'' 0", 12'' 0" wide, in one piece\nCuts from this length, width × length, from its start: 1: 5'' 3 3/4" × 24'' 10 1/2"; 3: 2'' 0 1/4" × 19'' 9"; 10: 2'' 11 1/2" × 9'' 7 1/2"; 4: 2'' 3" × 7'' 9"; 14: 2'' 11 1/2" × 5'' 0 3/4"; 2: 12'' 0" × 19'' 9"; 5: 12'' 0" × 14'' 0"; 11: 3'' 8 1/2" × 3'' 2 3/4"; 12: 3'' 8 1/2" × 3'' 2 3/4"; 13: 3'' 8 1/2" × 3'' 2 3/4"\nFennel Twist, oat: from one dye lot; pile one way along the whole length\nQuillstone Saxony, slate: one length of 8'' 0", 13'' 6" wide, in one piece\nCuts from this length, width × length, from its start: 7: 8'' 5 1/4" × 7'' 3"\nQuillstone Saxony, slate: from one dye lot; pile one way along the whole length\nQuillstone Saxony, slate: not ordered, from our stock: 17'' 2" of roll R-0988','\n',char(10)),'USD',2,112960,0,112960);
INSERT INTO orders VALUES('O-5',5,'Tolland Vale Carpets','made','2026-11-26',NULL,NULL,NULL,NULL,NULL,replace('Marlfield Trellis, moss: one length of 11'' 0", 12'' 0" wide, in one piece\nCuts from this length, width × length, from its start: 6: 11'' 5 3/8" × 10'' 9 3/8"\nMarlfield Trellis, moss: from one dye lot; pile one way along the whole length\nMarlfield Trellis, moss: pattern repeat 2'' 3", half-drop match; start at a whole repeat\nBrackenholm Loop, rust: one length of 4.700 m, 4.000 m wide, in one piece\nCuts from this length, width × length, from its start: 9: 3.176 m × 4.691 m\nBrackenholm Loop, rust: from one dye lot; pile one way along the whole length','\n',char(10)),'USD',2,55475,0,55475);
INSERT INTO orders VALUES('O-6',6,'Brindle Trade Supply','made','2026-11-26',NULL,NULL,NULL,NULL,NULL,'','USD',2,53464,0,53464);
CREATE TABLE order_jobs (
  number TEXT NOT NULL REFERENCES orders,
  job_id TEXT NOT NULL,
  PRIMARY KEY (number, job_id)
) STRICT, WITHOUT ROWID;
INSERT INTO order_jobs VALUES('O-1','J-1');
INSERT INTO order_jobs VALUES('O-2','J-1');
INSERT INTO order_jobs VALUES('O-3','J-1');
INSERT INTO order_jobs VALUES('O-4','J-8');
INSERT INTO order_jobs VALUES('O-5','J-8');
INSERT INTO order_jobs VALUES('O-6','J-8');
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
INSERT INTO order_lines VALUES('O-1',0,'fennel-twist-oat','Fennel Twist, oat','Hall, Living room, Attic stair, Dining room: pieces 1–5, 10–14; 62'' 0" of roll × 12'' 0" wide; 61'' 10 1/4" is cut from it, the rest is the supplier''s step',82666667,'sq yd',0,'sq yd',1140,94240,0);
INSERT INTO order_lines VALUES('O-1',1,'quillstone-saxony-slate','Quillstone Saxony, slate','Box room: piece 7; 8'' 0" of roll × 13'' 6" wide; 7'' 3" is cut from it, the rest is the supplier''s step',12000000,'sq yd',0,'sq yd',1560,18720,0);
INSERT INTO order_lines VALUES('O-2',0,'marlfield-trellis-moss','Marlfield Trellis, moss','Study: piece 6; 11'' 0" of roll × 12'' 0" wide; 10'' 9 3/8" is cut from it, the rest is the supplier''s step',14666667,'sq yd',0,'sq yd',1975,28967,0);
INSERT INTO order_lines VALUES('O-2',1,'brackenholm-loop-rust','Brackenholm Loop, rust','Garden room: piece 9; 15'' 5 1/16" (4.700 m) of roll × 13'' 1 1/2" (4.000 m) wide; 15'' 4 11/16" (4.691 m) is cut from it, the rest is the supplier''s step',18800000,'m2',0,'m2',1410,26508,0);
INSERT INTO order_lines VALUES('O-3',0,'dovecote-cushion','Dovecote Cushion, 7/16 in','Hall, Living room, Dining room 544.60 sq ft; Study, Study closet 113.96 sq ft; Box room 56.47 sq ft; Back bedroom, Bedroom closet 173.00 sq ft; Attic stair: 12 steps × 1'' 6 1/4" × 2'' 7 1/2" wide, more at the turn and the wider steps',120000000,'sq yd',4,'roll',310,37200,120000000);
INSERT INTO order_lines VALUES('O-3',1,'tack-strip','Tack strip, 4 ft lengths','Hall 57'' 0" less openings 18'' 4"; Living room 69'' 2" less openings 2'' 8"; Dining room 52'' 7 7/8" less openings 7'' 8"; Study 43'' 0 3/4" less openings 5'' 0"; Study closet 16'' 3" less openings 2'' 6"; Box room 30'' 0" less openings 2'' 6"; Back bedroom 50'' 8" less openings 9'' 4"; Bedroom closet 14'' 4" less openings 4'' 0"; Attic stair: 12 steps × 1 strip of 2'' 7 1/2" and 2'' 3" at the turn and the wider steps',400000000,'ft',1,'carton',11,4400,400000000);
INSERT INTO order_lines VALUES('O-3',2,'seam-tape-3','Seam tape, 3 in','4 side seams, 34'' 8" in all (Living room, Dining room, Hall, pieces 1–5)',66000000,'ft',1,'roll',24,1584,66000000);
INSERT INTO order_lines VALUES('O-3',3,'seam-sealer','Seam sealer, 8 fl oz bottle','69'' 4" of edge, both edges of every seam: 4 side seams, 34'' 8" in all (Living room, Dining room, Hall, pieces 1–5)',1000000,'each',1,'each',620,620,1000000);
INSERT INTO order_lines VALUES('O-3',4,'carpet-adhesive','Carpet adhesive, 4 gal','Garden room 147.88 sq ft',4000000,'gal',1,'tub',1750,7000,4000000);
INSERT INTO order_lines VALUES('O-3',5,'oak-reducer','Oak reducer, 6 ft','Hall, D1: 3'' 0"; Dining room, D1: 2'' 8"',6000000,'ft',1,'each',320,1920,6000000);
INSERT INTO order_lines VALUES('O-3',6,'door-bar','Door bar, satin, 3 ft','Back bedroom to Garden room, D2: 2'' 8"',1000000,'each',1,'each',740,740,1000000);
INSERT INTO order_lines VALUES('O-4',0,'fennel-twist-oat','Fennel Twist, oat','Hall, Living room, Attic stair, Dining room: pieces 1–5, 10–14; 62'' 0" of roll × 12'' 0" wide; 61'' 10 1/4" is cut from it, the rest is the supplier''s step',82666667,'sq yd',0,'sq yd',1140,94240,10000000);
INSERT INTO order_lines VALUES('O-4',1,'quillstone-saxony-slate','Quillstone Saxony, slate','Box room: piece 7; 8'' 0" of roll × 13'' 6" wide; 7'' 3" is cut from it, the rest is the supplier''s step',12000000,'sq yd',0,'sq yd',1560,18720,0);
INSERT INTO order_lines VALUES('O-5',0,'marlfield-trellis-moss','Marlfield Trellis, moss','Study: piece 6; 11'' 0" of roll × 12'' 0" wide; 10'' 9 3/8" is cut from it, the rest is the supplier''s step',14666667,'sq yd',0,'sq yd',1975,28967,0);
INSERT INTO order_lines VALUES('O-5',1,'brackenholm-loop-rust','Brackenholm Loop, rust','Garden room: piece 9; 15'' 5 1/16" (4.700 m) of roll × 13'' 1 1/2" (4.000 m) wide; 15'' 4 11/16" (4.691 m) is cut from it, the rest is the supplier''s step',18800000,'m2',0,'m2',1410,26508,0);
INSERT INTO order_lines VALUES('O-6',0,'dovecote-cushion','Dovecote Cushion, 7/16 in','Hall, Living room, Dining room 544.60 sq ft; Study, Study closet 113.96 sq ft; Box room 56.47 sq ft; Back bedroom, Bedroom closet 173.00 sq ft; Attic stair: 12 steps × 1'' 6 1/4" × 2'' 7 1/2" wide, more at the turn and the wider steps',120000000,'sq yd',4,'roll',310,37200,0);
INSERT INTO order_lines VALUES('O-6',1,'tack-strip','Tack strip, 4 ft lengths','Hall 57'' 0" less openings 18'' 4"; Living room 69'' 2" less openings 2'' 8"; Dining room 52'' 7 7/8" less openings 7'' 8"; Study 43'' 0 3/4" less openings 5'' 0"; Study closet 16'' 3" less openings 2'' 6"; Box room 30'' 0" less openings 2'' 6"; Back bedroom 50'' 8" less openings 9'' 4"; Bedroom closet 14'' 4" less openings 4'' 0"; Attic stair: 12 steps × 1 strip of 2'' 7 1/2" and 2'' 3" at the turn and the wider steps',400000000,'ft',1,'carton',11,4400,0);
INSERT INTO order_lines VALUES('O-6',2,'seam-tape-3','Seam tape, 3 in','4 side seams, 34'' 8" in all (Living room, Dining room, Hall, pieces 1–5)',66000000,'ft',1,'roll',24,1584,0);
INSERT INTO order_lines VALUES('O-6',3,'seam-sealer','Seam sealer, 8 fl oz bottle','69'' 4" of edge, both edges of every seam: 4 side seams, 34'' 8" in all (Living room, Dining room, Hall, pieces 1–5)',1000000,'each',1,'each',620,620,0);
INSERT INTO order_lines VALUES('O-6',4,'carpet-adhesive','Carpet adhesive, 4 gal','Garden room 147.88 sq ft',4000000,'gal',1,'tub',1750,7000,0);
INSERT INTO order_lines VALUES('O-6',5,'oak-reducer','Oak reducer, 6 ft','Hall, D1: 3'' 0"; Dining room, D1: 2'' 8"',6000000,'ft',1,'each',320,1920,0);
INSERT INTO order_lines VALUES('O-6',6,'door-bar','Door bar, satin, 3 ft','Back bedroom to Garden room, D2: 2'' 8"',1000000,'each',1,'each',740,740,0);
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
INSERT INTO issued_quotations VALUES('Q-1',1,'J-1',1,'2026-03-05','Gull Cottage, ground floor','Tamsin Oddlebury',replace('Gull Cottage\nLantern Lane\nPort Sandrel\nIsle of Thorrin','\n',char(10)),'USD',2,70000,615920,43114,659034,263614,326580,289340,16,615920,0,0,NULL,'full',30,'Seams are placed as the plan shows; a proper seam is not wholly invisible. Old floors are taken up only where a line says so.',NULL,0,'Q-1',NULL);
INSERT INTO issued_quotations VALUES('Q-2',2,'J-2',4,'2026-03-05','Harbour House','0012',NULL,'USD',2,82500,269372,22223,291595,145797,30070,239302,4,299302,0,29930,'O''Shea & Sons; DROP TABLE jobs; --','amounts',15,'',NULL,0,'Q-2',NULL);
INSERT INTO issued_quotations VALUES('Q-3',3,'J-3',6,'2026-03-05','Harbour House','½ in % _ * ? [x] \','0012','USD',2,82500,166331,13722,180053,90026,8769,157562,4,184812,0,18481,'"quoted" and ''quoted''','amounts',0,'½ in % _ * ? [x] \',NULL,0,'Q-3',NULL);
INSERT INTO issued_quotations VALUES('Q-4',4,'J-8',9,'2026-11-26','Version three, again','Tamsin Oddlebury',replace('Gull Cottage\nLantern Lane\nPort Sandrel\nIsle of Thorrin','\n',char(10)),'USD',2,70000,615920,43114,659034,263614,326580,289340,16,615920,0,0,NULL,'full',30,'Seams are placed as the plan shows; a proper seam is not wholly invisible. Old floors are taken up only where a line says so.',NULL,0,'Q-4',NULL);
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
INSERT INTO issued_lines VALUES('Q-1',0,'fennel-twist-oat','Fennel Twist, oat','Hall, Living room, Attic stair, Dining room: pieces 1–5, 10–14; 62'' 0" of roll × 12'' 0" wide; 61'' 10 1/4" is cut from it, the rest is the supplier''s step',82666667,'sq yd',0,'sq yd',2150,177733,94240,0,0,177733,0,70000,0,0,82471675,'sq yd',0,NULL);
INSERT INTO issued_lines VALUES('Q-1',1,'quillstone-saxony-slate','Quillstone Saxony, slate, from stock','Back bedroom: piece 8; 17'' 2" from roll R-0988; 17'' 2" of roll × 13'' 6" wide',25750000,'sq yd',0,'sq yd',2900,74675,40170,0,1,74675,0,70000,0,0,25750000,'sq yd',0,NULL);
INSERT INTO issued_lines VALUES('Q-1',2,'quillstone-saxony-slate','Quillstone Saxony, slate','Box room: piece 7; 8'' 0" of roll × 13'' 6" wide; 7'' 3" is cut from it, the rest is the supplier''s step',12000000,'sq yd',0,'sq yd',2900,34800,18720,0,0,34800,0,70000,0,0,10875000,'sq yd',0,NULL);
INSERT INTO issued_lines VALUES('Q-1',3,'marlfield-trellis-moss','Marlfield Trellis, moss','Study: piece 6; 11'' 0" of roll × 12'' 0" wide; 10'' 9 3/8" is cut from it, the rest is the supplier''s step',14666667,'sq yd',0,'sq yd',3700,54267,28967,0,0,54267,0,70000,0,0,14375301,'sq yd',0,NULL);
INSERT INTO issued_lines VALUES('Q-1',4,'brackenholm-loop-rust','Brackenholm Loop, rust','Garden room: piece 9; 15'' 5 1/16" (4.700 m) of roll × 13'' 1 1/2" (4.000 m) wide; 15'' 4 11/16" (4.691 m) is cut from it, the rest is the supplier''s step',18800000,'m2',0,'m2',2690,50572,26508,0,0,50572,0,70000,0,0,18765375,'m2',0,NULL);
INSERT INTO issued_lines VALUES('Q-1',5,'dovecote-cushion','Dovecote Cushion, 7/16 in','Hall, Living room, Dining room 544.60 sq ft; Study, Study closet 113.96 sq ft; Box room 56.47 sq ft; Back bedroom, Bedroom closet 173.00 sq ft; Attic stair: 12 steps × 1'' 6 1/4" × 2'' 7 1/2" wide, more at the turn and the wider steps',120000000,'sq yd',4,'roll',595,71400,37200,0,0,71400,0,70000,0,0,106107614,'sq yd',0,NULL);
INSERT INTO issued_lines VALUES('Q-1',6,'tack-strip','Tack strip, 4 ft lengths','Hall 57'' 0" less openings 18'' 4"; Living room 69'' 2" less openings 2'' 8"; Dining room 52'' 7 7/8" less openings 7'' 8"; Study 43'' 0 3/4" less openings 5'' 0"; Study closet 16'' 3" less openings 2'' 6"; Box room 30'' 0" less openings 2'' 6"; Back bedroom 50'' 8" less openings 9'' 4"; Bedroom closet 14'' 4" less openings 4'' 0"; Attic stair: 12 steps × 1 strip of 2'' 7 1/2" and 2'' 3" at the turn and the wider steps',400000000,'ft',1,'carton',32,12800,4400,0,0,12800,0,70000,0,0,314885048,'ft',0,NULL);
INSERT INTO issued_lines VALUES('Q-1',7,'seam-tape-3','Seam tape, 3 in','4 side seams, 34'' 8" in all (Living room, Dining room, Hall, pieces 1–5)',66000000,'ft',1,'roll',55,3630,1584,0,0,3630,0,70000,0,0,34666257,'ft',0,NULL);
INSERT INTO issued_lines VALUES('Q-1',8,'seam-sealer','Seam sealer, 8 fl oz bottle','69'' 4" of edge, both edges of every seam: 4 side seams, 34'' 8" in all (Living room, Dining room, Hall, pieces 1–5)',1000000,'each',1,'each',1150,1150,620,0,0,1150,0,70000,0,0,693325,'each',0,NULL);
INSERT INTO issued_lines VALUES('Q-1',9,'carpet-adhesive','Carpet adhesive, 4 gal','Garden room 147.88 sq ft',4000000,'gal',1,'tub',2900,11600,7000,0,0,11600,0,70000,0,0,1825671,'gal',0,NULL);
INSERT INTO issued_lines VALUES('Q-1',10,'oak-reducer','Oak reducer, 6 ft','Hall, D1: 3'' 0"; Dining room, D1: 2'' 8"',6000000,'ft',1,'each',675,4050,1920,0,0,4050,0,70000,0,0,5666667,'ft',0,NULL);
INSERT INTO issued_lines VALUES('Q-1',11,'door-bar','Door bar, satin, 3 ft','Back bedroom to Garden room, D2: 2'' 8"',1000000,'each',1,'each',1500,1500,740,0,0,1500,0,70000,0,0,888889,'each',0,NULL);
INSERT INTO issued_lines VALUES('Q-1',12,'lay','Laying','Hall, Living room, Dining room 544.60 sq ft; Study, Study closet 113.96 sq ft; Box room 56.47 sq ft; Back bedroom, Bedroom closet 173.00 sq ft; Garden room 147.88 sq ft',115101153,'sq yd',0,'sq yd',775,89203,48918,1,0,89203,0,70000,0,0,115101153,'sq yd',0,NULL);
INSERT INTO issued_lines VALUES('Q-1',13,'side-seam','Side seams','4 side seams, 34'' 8" in all (Living room, Dining room, Hall, pieces 1–5)',34666257,'ft',0,'ft',180,6240,3293,1,0,6240,0,70000,0,0,34666257,'ft',0,NULL);
INSERT INTO issued_lines VALUES('Q-1',14,'stair','Stairs, each step','Attic stair: 12 steps',12000000,'each',0,'each',1150,13800,7800,1,0,13800,0,70000,0,0,12000000,'each',0,NULL);
INSERT INTO issued_lines VALUES('Q-1',15,'fixed','Fixed charge','Once for the job',1000000,'each',0,'each',8500,8500,4500,1,0,8500,0,70000,0,0,1000000,'each',0,NULL);
INSERT INTO issued_lines VALUES('Q-2',0,'item bebad3d3',NULL,'Gull Cottage',73832104,'h',6,'L',1121,78011,8436,1,0,82766,57457,82500,0,0,566982,'yd',59221,'地毯店');
INSERT INTO issued_lines VALUES('Q-2',1,'item 2033357f',NULL,'',60363321,'box',7,'tub',1064,64227,5368,1,1,64227,0,82500,0,1,824342,'m2',506560,'O''Shea & Sons; DROP TABLE jobs; --');
INSERT INTO issued_lines VALUES('Q-2',2,'item b73a1eb3','Señora Ibáñez, C/ Mayor 3, 2º izq.',NULL,60338623,'sq yd',3,'roll',3081,153300,8546,1,1,185903,175376,82500,0,0,48051,'carton',696758,'0012');
INSERT INTO issued_lines VALUES('Q-2',3,'item ba625533','Gull Cottage',NULL,9340008,'sq yd',6,'yd',403,3764,7720,1,0,3764,0,82500,0,0,278839,'box',290737,NULL);
INSERT INTO issued_lines VALUES('Q-3',0,'item a033aec3','Gull Cottage','Señora Ibáñez, C/ Mayor 3, 2º izq.',72527659,'sq ft',6,'carton',7098,347173,6728,1,0,514801,325618,82500,1,1,207705,'roll',792090,'Señora Ibáñez, C/ Mayor 3, 2º izq.');
INSERT INTO issued_lines VALUES('Q-3',1,'item d2a31fa0','"quoted" and ''quoted''',replace('two\nlines	and a tab','\n',char(10)),85775570,'each',7,'h',5205,446462,5258,0,1,446462,0,82500,1,0,126992,'ft',837425,'Gull Cottage');
INSERT INTO issued_lines VALUES('Q-3',2,'item ced6e80c','0012','O''Shea & Sons; DROP TABLE jobs; --',12086787,'ft',4,'sq yd',2873,18001,4320,0,1,34725,481618,82500,0,0,565928,'box',614323,'O''Shea & Sons; DROP TABLE jobs; --');
INSERT INTO issued_lines VALUES('Q-3',3,'item 2f6c2639','O''Shea & Sons; DROP TABLE jobs; --','½ in % _ * ? [x] \',73401251,'box',1,'sq yd',4010,166811,4449,1,1,294339,433268,82500,0,1,795637,'ft',473808,'½ in % _ * ? [x] \');
INSERT INTO issued_lines VALUES('Q-4',0,'fennel-twist-oat','Fennel Twist, oat','Hall, Living room, Attic stair, Dining room: pieces 1–5, 10–14; 62'' 0" of roll × 12'' 0" wide; 61'' 10 1/4" is cut from it, the rest is the supplier''s step',82666667,'sq yd',0,'sq yd',2150,177733,94240,0,0,177733,0,70000,0,0,82471675,'sq yd',0,NULL);
INSERT INTO issued_lines VALUES('Q-4',1,'quillstone-saxony-slate','Quillstone Saxony, slate, from stock','Back bedroom: piece 8; 17'' 2" from roll R-0988; 17'' 2" of roll × 13'' 6" wide',25750000,'sq yd',0,'sq yd',2900,74675,40170,0,1,74675,0,70000,0,0,25750000,'sq yd',0,NULL);
INSERT INTO issued_lines VALUES('Q-4',2,'quillstone-saxony-slate','Quillstone Saxony, slate','Box room: piece 7; 8'' 0" of roll × 13'' 6" wide; 7'' 3" is cut from it, the rest is the supplier''s step',12000000,'sq yd',0,'sq yd',2900,34800,18720,0,0,34800,0,70000,0,0,10875000,'sq yd',0,NULL);
INSERT INTO issued_lines VALUES('Q-4',3,'marlfield-trellis-moss','Marlfield Trellis, moss','Study: piece 6; 11'' 0" of roll × 12'' 0" wide; 10'' 9 3/8" is cut from it, the rest is the supplier''s step',14666667,'sq yd',0,'sq yd',3700,54267,28967,0,0,54267,0,70000,0,0,14375301,'sq yd',0,NULL);
INSERT INTO issued_lines VALUES('Q-4',4,'brackenholm-loop-rust','Brackenholm Loop, rust','Garden room: piece 9; 15'' 5 1/16" (4.700 m) of roll × 13'' 1 1/2" (4.000 m) wide; 15'' 4 11/16" (4.691 m) is cut from it, the rest is the supplier''s step',18800000,'m2',0,'m2',2690,50572,26508,0,0,50572,0,70000,0,0,18765375,'m2',0,NULL);
INSERT INTO issued_lines VALUES('Q-4',5,'dovecote-cushion','Dovecote Cushion, 7/16 in','Hall, Living room, Dining room 544.60 sq ft; Study, Study closet 113.96 sq ft; Box room 56.47 sq ft; Back bedroom, Bedroom closet 173.00 sq ft; Attic stair: 12 steps × 1'' 6 1/4" × 2'' 7 1/2" wide, more at the turn and the wider steps',120000000,'sq yd',4,'roll',595,71400,37200,0,0,71400,0,70000,0,0,106107614,'sq yd',0,NULL);
INSERT INTO issued_lines VALUES('Q-4',6,'tack-strip','Tack strip, 4 ft lengths','Hall 57'' 0" less openings 18'' 4"; Living room 69'' 2" less openings 2'' 8"; Dining room 52'' 7 7/8" less openings 7'' 8"; Study 43'' 0 3/4" less openings 5'' 0"; Study closet 16'' 3" less openings 2'' 6"; Box room 30'' 0" less openings 2'' 6"; Back bedroom 50'' 8" less openings 9'' 4"; Bedroom closet 14'' 4" less openings 4'' 0"; Attic stair: 12 steps × 1 strip of 2'' 7 1/2" and 2'' 3" at the turn and the wider steps',400000000,'ft',1,'carton',32,12800,4400,0,0,12800,0,70000,0,0,314885048,'ft',0,NULL);
INSERT INTO issued_lines VALUES('Q-4',7,'seam-tape-3','Seam tape, 3 in','4 side seams, 34'' 8" in all (Living room, Dining room, Hall, pieces 1–5)',66000000,'ft',1,'roll',55,3630,1584,0,0,3630,0,70000,0,0,34666257,'ft',0,NULL);
INSERT INTO issued_lines VALUES('Q-4',8,'seam-sealer','Seam sealer, 8 fl oz bottle','69'' 4" of edge, both edges of every seam: 4 side seams, 34'' 8" in all (Living room, Dining room, Hall, pieces 1–5)',1000000,'each',1,'each',1150,1150,620,0,0,1150,0,70000,0,0,693325,'each',0,NULL);
INSERT INTO issued_lines VALUES('Q-4',9,'carpet-adhesive','Carpet adhesive, 4 gal','Garden room 147.88 sq ft',4000000,'gal',1,'tub',2900,11600,7000,0,0,11600,0,70000,0,0,1825671,'gal',0,NULL);
INSERT INTO issued_lines VALUES('Q-4',10,'oak-reducer','Oak reducer, 6 ft','Hall, D1: 3'' 0"; Dining room, D1: 2'' 8"',6000000,'ft',1,'each',675,4050,1920,0,0,4050,0,70000,0,0,5666667,'ft',0,NULL);
INSERT INTO issued_lines VALUES('Q-4',11,'door-bar','Door bar, satin, 3 ft','Back bedroom to Garden room, D2: 2'' 8"',1000000,'each',1,'each',1500,1500,740,0,0,1500,0,70000,0,0,888889,'each',0,NULL);
INSERT INTO issued_lines VALUES('Q-4',12,'lay','Laying','Hall, Living room, Dining room 544.60 sq ft; Study, Study closet 113.96 sq ft; Box room 56.47 sq ft; Back bedroom, Bedroom closet 173.00 sq ft; Garden room 147.88 sq ft',115101153,'sq yd',0,'sq yd',775,89203,48918,1,0,89203,0,70000,0,0,115101153,'sq yd',0,NULL);
INSERT INTO issued_lines VALUES('Q-4',13,'side-seam','Side seams','4 side seams, 34'' 8" in all (Living room, Dining room, Hall, pieces 1–5)',34666257,'ft',0,'ft',180,6240,3293,1,0,6240,0,70000,0,0,34666257,'ft',0,NULL);
INSERT INTO issued_lines VALUES('Q-4',14,'stair','Stairs, each step','Attic stair: 12 steps',12000000,'each',0,'each',1150,13800,7800,1,0,13800,0,70000,0,0,12000000,'each',0,NULL);
INSERT INTO issued_lines VALUES('Q-4',15,'fixed','Fixed charge','Once for the job',1000000,'each',0,'each',8500,8500,4500,1,0,8500,0,70000,0,0,1000000,'each',0,NULL);
CREATE TABLE issued_taxes (
  number TEXT NOT NULL REFERENCES issued_quotations,
  tax_ppm INTEGER NOT NULL,
  net_minor INTEGER NOT NULL,
  tax_minor INTEGER NOT NULL,
  PRIMARY KEY (number, tax_ppm)
) STRICT, WITHOUT ROWID;
INSERT INTO issued_taxes VALUES('Q-1',70000,615920,43114);
INSERT INTO issued_taxes VALUES('Q-2',82500,269372,22223);
INSERT INTO issued_taxes VALUES('Q-3',82500,166331,13722);
INSERT INTO issued_taxes VALUES('Q-4',70000,615920,43114);
CREATE TABLE issued_payments (
  number TEXT NOT NULL REFERENCES issued_quotations,
  position INTEGER NOT NULL,
  name TEXT,
  part_ppm INTEGER NOT NULL,
  days INTEGER NOT NULL,
  amount_minor INTEGER NOT NULL,
  PRIMARY KEY (number, position)
) STRICT, WITHOUT ROWID;
CREATE TABLE issued_papers (
  number TEXT NOT NULL PRIMARY KEY REFERENCES issued_quotations,
  digest TEXT NOT NULL REFERENCES files
) STRICT, WITHOUT ROWID;
CREATE TABLE quotation_events (
  event INTEGER NOT NULL PRIMARY KEY,
  number TEXT NOT NULL REFERENCES issued_quotations,
  state TEXT NOT NULL,
  day TEXT NOT NULL,
  notes TEXT
) STRICT;
INSERT INTO quotation_events VALUES(1,'Q-1','accepted','2026-11-26',NULL);
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
INSERT INTO stair_turns VALUES(6,'M1','stair',0,'winders','back-right',5,6,121920,178816);
INSERT INTO stair_turns VALUES(6,'M1','stair',1,'landing','left',9,0,146304,146304);
INSERT INTO stair_turns VALUES(7,'M1','stair',0,'winders','back-right',5,6,121920,178816);
INSERT INTO stair_turns VALUES(7,'M1','stair',1,'landing','left',9,0,146304,146304);
CREATE INDEX revisions_by_change ON revisions (changed, revision);
CREATE INDEX reservations_by_job ON reservations (job_id);
CREATE INDEX roll_moves_by_roll ON roll_moves (roll, move);
CREATE INDEX cut_pieces_by_job ON cut_pieces (job_id, cut);
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
CREATE INDEX order_jobs_by_job ON order_jobs (job_id);
CREATE INDEX issued_quotations_by_job ON issued_quotations (job_id, serial);
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
PRAGMA writable_schema=OFF;
COMMIT;
PRAGMA application_id = 1383547764;
PRAGMA user_version = 5;
